#include "check_run.hpp"

#include <tbb/global_control.h>
#include <tbb/parallel_pipeline.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <thread>
#include <utility>

namespace sealworthy::cli {
namespace {

/// What this run or the one before wrote among the recipes is no recipe.
void leave_out_own(std::vector<std::string>& files, const CheckArguments& arguments) {
  std::vector<std::string> own{arguments.baseline, arguments.write_baseline};
  for (const auto& place : output_places(arguments.outputs, arguments.common.format).places)
    own.push_back(place.path);
  std::erase_if(own, [](const std::string& path) { return path.empty() || path == "-"; });
  std::erase_if(files, [&own](const std::string& file) {
    return std::any_of(own.begin(), own.end(), [&file](const std::string& path) {
      std::error_code none;
      return std::filesystem::path(path).filename() == std::filesystem::path(file).filename() &&
             std::filesystem::equivalent(path, file, none);
    });
  });
}

}  // namespace

CheckRun::CheckRun(const CheckArguments& arguments, const Checker& checker, CheckOptions options,
                   FailPolicy fail, Outputs& outputs)
    : arguments_(arguments),
      checker_(checker),
      options_(std::move(options)),
      fail_(fail),
      outputs_(outputs),
      named_(arguments.named.begin(), arguments.named.end()),
      kitchens_(checker, options_.today, [this](const InputError& error) { trouble(error); }) {}

bool CheckRun::set_up() {
  if (!arguments_.common.kitchen.empty() && !kitchens_.use_for_all(arguments_.common.kitchen)) return false;
  if (!baselines_.open(arguments_.baseline, arguments_.write_baseline)) return false;
  if (arguments_.cache.empty()) return true;
  auto common = arguments_.common.altitude + '\0' + options_.against + '\0';
  for (const bool option : {options_.all, options_.explain, options_.side_by_side})
    common += option ? '+' : '-';
  for (const auto& path : expand(arguments_.common.rules).files) {
    const auto text = read_file(path, file_limit);
    if (const auto* rules = std::get_if<std::string>(&text)) common += '\0' + path + '\0' + *rules;
  }
  cache_.emplace(arguments_.cache, common, arguments_.today);
  return true;
}

int CheckRun::all() {
  if (!set_up()) return unreadable;
  auto expanded = expand(arguments_.paths);
  leave_out_own(expanded.files, arguments_);
  for (const auto& t : expanded.troubles) trouble({t.path, {}, t.message, {}});
  progress_.start(expanded.files.size());
  outputs_.begin();
  check_all(expanded.files);
  outputs_.end(summary_);
  progress_.stop();
  if (!outputs_.written()) tell("the report could not be written");
  if (cache_ && !cache_->finish())
    tell(
        {arguments_.cache, {}, "warning: the cache can't be written, so the next run will take as long", {}});
  const bool noted = baselines_.finish();
  if (troubled_ || !noted || !outputs_.written() || summary_.count(Verdict::unreadable) > 0)
    return unreadable;
  return failed_ ? found : fine;
}

CheckOptions CheckRun::options_for(const std::string& path) {
  auto options = options_;
  if (auto kitchen = kitchens_.of(path)) options.kitchen = std::move(kitchen);
  options.named = named_.contains(path);
  return options;
}

CheckRun::Checked CheckRun::check(const std::string& path, std::variant<std::string, Trouble> text) {
  if (auto* t = std::get_if<Trouble>(&text)) return {{}, std::move(*t)};
  const auto& bytes = std::get<std::string>(text);
  const auto options = options_for(path);
  const auto reader = std::filesystem::path(path).extension().string() + (options.named ? " named" : "");
  return {check_or_recall(path, bytes, reader, options,
                          [&] { return checker_.check_file(path, bytes, options); }),
          {}};
}

CheckRun::Checked CheckRun::check(const std::string& path, Lines lines) {
  const auto options = options_for(path);
  auto report = check_or_recall(path, lines.text, "line " + std::to_string(lines.first), options,
                                [&] { return checker_.check_lines(path, lines.text, lines.first, options); });
  return {std::move(report), std::move(lines.trouble), true, lines.last};
}

std::vector<CheckRun::Checked> CheckRun::check(const Work& work) {
  std::vector<Checked> done;
  if (work.lines) {
    done.push_back(check(work.files.front(), *work.lines));
    return done;
  }
  done.reserve(work.files.size());
  for (const auto& file : work.files)
    done.push_back(check(file, work.text ? *work.text : read_file(file, most_bytes(file))));
  return done;
}

template <class Check>
FileReport CheckRun::check_or_recall(const std::string& path, const std::string& text,
                                     const std::string& reader, const CheckOptions& options, Check check) {
  if (!cache_) return check();
  const auto key = cache_->key(text, reader, options.kitchen ? options.kitchen->path() : std::string());
  if (auto known = cache_->find(key, path)) return {std::move(*known), 0};
  auto report = check();
  // A page that is passed over costs no more than looking it up.
  if (report.skipped == 0) cache_->add(key, report.recipes);
  return report;
}

/// The recipes of a file are numbered through all its lines; a file without any is a page without a recipe.
void CheckRun::number(Checked& lines) {
  for (auto& report : lines.report.recipes) report.document += static_cast<int>(before_);
  before_ += lines.report.recipes.size() + lines.report.skipped;
  if (!lines.last) return;
  if (before_ == 0) ++lines.report.skipped;
  before_ = 0;
}

void CheckRun::write(Checked& checked) {
  if (checked.lines) number(checked);
  summary_.skipped += checked.report.skipped;
  for (auto& report : checked.report.recipes) {
    baselines_.mark(report);
    summary_.add(report);
    failed_ = failed_ || fail_.fails(report);
    outputs_.recipe(report);
  }
  if (checked.trouble) trouble({checked.trouble->path, {}, checked.trouble->message, {}});
  if (checked.last) progress_.one_more();
}

/// Reports are written in the order of the files and lines whatever the number of threads; at most a few
/// pieces of work per thread are under way at once, which bounds memory.
void CheckRun::check_all(const std::vector<std::string>& files) {
  const auto jobs = static_cast<std::size_t>(
      arguments_.jobs > 0 ? arguments_.jobs
                          : static_cast<int>(std::max(1U, std::thread::hardware_concurrency())));
  WorkQueue queue(files);
  if (jobs == 1 || queue.one_piece()) {
    while (const auto work = queue.next())
      for (auto& checked : check(*work)) write(checked);
    return;
  }
  const tbb::global_control limit(tbb::global_control::max_allowed_parallelism, jobs);
  using WorkOnce = std::shared_ptr<const Work>;
  using Done = std::shared_ptr<std::vector<Checked>>;
  const auto take = tbb::make_filter<void, WorkOnce>(
      tbb::filter_mode::serial_in_order, [&](tbb::flow_control& control) -> WorkOnce {
        if (auto work = queue.next()) return std::make_shared<const Work>(std::move(*work));
        control.stop();
        return nullptr;
      });
  const auto do_it = tbb::make_filter<WorkOnce, Done>(tbb::filter_mode::parallel, [&](const WorkOnce& work) {
    return std::make_shared<std::vector<Checked>>(check(*work));
  });
  const auto put_out = tbb::make_filter<Done, void>(tbb::filter_mode::serial_in_order, [&](const Done& done) {
    for (auto& checked : *done) write(checked);
  });
  tbb::parallel_pipeline(4 * jobs, take & do_it & put_out);
}

void CheckRun::trouble(const InputError& error) {
  const std::scoped_lock lock(mutex_);
  troubled_ = true;
  progress_.clear();
  tell(error);
}

}  // namespace sealworthy::cli
