# Checks recipe cards as a step of a build.
#
#   sealworthy_check(FILES card... [NAME target] [KITCHEN file] [BASELINE file] [FAIL_ON severity] [OPTIONS option...])
#
# Adds a target (sealworthy_check, or NAME) to the default build that runs `sealworthy check` over the cards when one of
# them, the kitchen file or the baseline has changed, and stops the build at exit status 1 or 2. FAIL_ON is danger,
# warning (the default), caution, notice or never; OPTIONS are handed on as they are. Paths are relative to the folder of
# the CMakeLists.txt that calls it.
function(sealworthy_check)
  cmake_parse_arguments(PARSE_ARGV 0 arg "" "NAME;KITCHEN;BASELINE;FAIL_ON" "FILES;OPTIONS")
  if(arg_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "sealworthy_check: unknown arguments: ${arg_UNPARSED_ARGUMENTS}")
  endif()
  if(NOT arg_FILES)
    message(FATAL_ERROR "sealworthy_check: FILES names no card")
  endif()
  if(NOT arg_NAME)
    set(arg_NAME sealworthy_check)
  endif()
  set(options ${arg_OPTIONS})
  set(inputs ${arg_FILES})
  foreach(option KITCHEN BASELINE)
    if(arg_${option})
      string(TOLOWER ${option} word)
      list(APPEND options --${word} ${arg_${option}})
      list(APPEND inputs ${arg_${option}})
    endif()
  endforeach()
  if(arg_FAIL_ON)
    list(APPEND options --fail-on ${arg_FAIL_ON})
  endif()
  list(TRANSFORM inputs PREPEND ${CMAKE_CURRENT_SOURCE_DIR}/ REGEX "^[^/]" OUTPUT_VARIABLE watched)
  set(stamp ${CMAKE_CURRENT_BINARY_DIR}/${arg_NAME}.checked)
  add_custom_command(OUTPUT ${stamp}
    COMMAND Sealworthy::command check ${options} -- ${arg_FILES}
    COMMAND ${CMAKE_COMMAND} -E touch ${stamp}
    WORKING_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}
    DEPENDS ${watched} Sealworthy::command
    COMMENT "Checking recipes (${arg_NAME})" VERBATIM)
  add_custom_target(${arg_NAME} ALL DEPENDS ${stamp})
endfunction()
