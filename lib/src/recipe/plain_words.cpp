#include "recipe/plain_words.hpp"

#include <libxml/HTMLparser.h>
#include <utf8.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <iterator>

namespace sealworthy::recipe {
namespace {

constexpr std::size_t longest_entity = 32;
constexpr std::size_t longest_tag = 4096;

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool is_character(std::uint32_t c) { return c > 0 && c <= 0x10FFFF && (c < 0xD800 || c > 0xDFFF); }

/// The character that the words between "&" and ";" name; 0: none.
std::uint32_t entity(std::string_view name) {
  if (name.starts_with('#')) {
    name.remove_prefix(1);
    const bool hexadecimal = name.starts_with('x') || name.starts_with('X');
    if (hexadecimal) name.remove_prefix(1);
    std::uint32_t value = 0;
    const auto result = std::from_chars(name.data(), name.data() + name.size(), value, hexadecimal ? 16 : 10);
    const bool whole = result.ec == std::errc() && result.ptr == name.data() + name.size();
    return whole && is_character(value) ? value : 0;
  }
  const std::string terminated(name);
  const auto* found = htmlEntityLookup(reinterpret_cast<const xmlChar*>(terminated.c_str()));
  return found == nullptr ? 0 : found->value;
}

/// Tags that stand within a line.
bool within_line(std::string_view tag) {
  static constexpr std::array<std::string_view, 20> inline_tags{
      "a", "abbr", "b",     "code", "em",     "font", "i",   "img",  "label", "mark",
      "q", "s",    "small", "span", "strong", "sub",  "sup", "time", "u",     "wbr"};
  return std::find(inline_tags.begin(), inline_tags.end(), tag) != inline_tags.end();
}

/// Windows-1252 where it differs from Latin-1 (WHATWG Encoding Standard, index windows-1252).
constexpr std::array<std::uint16_t, 32> windows_1252{
    0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

bool declares_western(std::string_view page) {
  constexpr std::size_t looked_at = 4096;
  std::string head(page.substr(0, looked_at));
  std::transform(head.begin(), head.end(), head.begin(), lower);
  const auto at = head.find("charset=");
  if (at == std::string::npos) return false;
  const std::string_view name = std::string_view(head).substr(at + 8, 16);
  return name.find("iso-8859-1") < 2 || name.find("windows-1252") < 2 || name.find("latin1") < 2;
}

std::string from_western(std::string_view page) {
  std::string out;
  out.reserve(page.size() + page.size() / 8);
  for (const char c : page) {
    const auto byte = static_cast<unsigned char>(c);
    const std::uint32_t point = byte >= 0x80 && byte < 0xA0 ? windows_1252[byte - 0x80U] : byte;
    utf8::append(static_cast<char32_t>(point), std::back_inserter(out));
  }
  return out;
}

std::string from_utf16(std::string_view page, bool big_endian) {
  std::u16string units;
  units.reserve(page.size() / 2);
  for (std::size_t i = 2; i + 1 < page.size(); i += 2) {
    const auto first = static_cast<unsigned char>(page[i]);
    const auto second = static_cast<unsigned char>(page[i + 1]);
    units += static_cast<char16_t>(big_endian ? first << 8U | second : second << 8U | first);
  }
  std::string out;
  utf8::utf16to8(units.begin(), units.end(), std::back_inserter(out));
  return out;
}

}  // namespace

std::string without_markup(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t left = text.size() - i;
    if (text[i] == '&') {
      const std::size_t end = text.substr(i, longest_entity).find(';');
      const std::uint32_t c = end == std::string_view::npos ? 0 : entity(text.substr(i + 1, end - 1));
      if (c != 0) {
        if (c == 0xA0)
          out += ' ';
        else
          utf8::append(static_cast<char32_t>(c), std::back_inserter(out));
        i += end + 1;
        continue;
      }
    } else if (text[i] == '<' && left > 1 &&
               (letter(text[i + 1]) || text[i + 1] == '/' || text[i + 1] == '!')) {
      const std::size_t end = text.substr(i, longest_tag).find('>');
      if (end != std::string_view::npos) {
        std::string name;
        for (std::size_t k = i + 1 + (text[i + 1] == '/' ? 1U : 0U); k < i + end && letter(text[k]); ++k)
          name += lower(text[k]);
        if (!within_line(name)) out += '\n';
        i += end + 1;
        continue;
      }
    }
    out += text[i++];
  }
  return out;
}

std::string_view as_utf8(std::string_view page, std::string& room) {
  try {
    if (page.starts_with("\xFF\xFE") || page.starts_with("\xFE\xFF")) {
      room = from_utf16(page, page.front() == '\xFE');
      return room;
    }
    if (utf8::is_valid(page.begin(), page.end())) return page;
    if (declares_western(page)) {
      room = from_western(page);
      return room;
    }
  } catch (const utf8::exception&) {
    room.clear();
  }
  return {};
}

}  // namespace sealworthy::recipe
