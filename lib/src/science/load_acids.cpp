#include <algorithm>

#include "checks/fields.hpp"
#include "science/acid_data.hpp"

namespace sealworthy::science {

using checks::ErrorSink;
using checks::Fields;
using foods::AcidClass;

namespace {

constexpr double per_milli = 1e-3;

std::vector<double> numbers(const yaml::Node* list, const ErrorSink& sink) {
  std::vector<double> values;
  if (list == nullptr) return values;
  for (const yaml::Node& item : list->items) {
    const auto value = checks::number_of(item);
    if (value)
      values.push_back(*value);
    else
      sink.add(item.at, "'" + std::string(item.text) + "' is no number");
  }
  return values;
}

/// Every row says how it was read and where it comes from; a list's own source stands for all of its rows.
bool read_origin(Fields& fields, bool own_source) {
  static const std::vector<std::string_view> words{"original", "reprint", "memory"};
  fields.text("source", own_source);
  fields.text("note");
  const auto read = fields.choice("read", words);
  return read && *read == 2;
}

const std::vector<std::string_view> class_words{"acid", "borderline", "low-acid", "neutral"};

}  // namespace

/// Acids, additions, defaults and bounds.
class AcidLoader {
 public:
  AcidLoader(AcidData& data, const foods::Catalogue& catalogue, ErrorSink sink)
      : data_(data), catalogue_(catalogue), sink_(sink) {}

  void acids(const yaml::Node& list) {
    for (const yaml::Node& node : list.items) {
      Fields fields(node, "weak acid", sink_);
      const std::string id = fields.text("id", true), name = fields.text("name", true);
      const auto pka = numbers(fields.find("pka"), sink_);
      const double grams = fields.number("g-per-mol").value_or(0);
      read_origin(fields, false);
      fields.done();
      if (pka.empty() || pka.size() > 3 || data_.acids_.size() == weak_acid_limit || data_.acid(id)) {
        sink_.add(node.at, "a weak acid takes an id of its own and one to three pKa values");
        continue;
      }
      data_.acids_.push_back(weak_acid(pka));
      data_.ids_.push_back(id);
      data_.names_.push_back(name);
      data_.grams_per_mol_.push_back(grams);
    }
  }

  void additions(const yaml::Node& list) {
    for (const yaml::Node& node : list.items) addition(node);
  }

  void defaults(const yaml::Node& list) {
    const auto unknown = data_.acid("unknown");
    for (const yaml::Node& node : list.items) {
      Fields fields(node, "default", sink_);
      AcidData::Default one;
      one.kinds = fields.list("kinds");
      const unsigned classes = fields.choices("classes", class_words);
      for (unsigned i = 0; i < class_words.size(); ++i)
        if ((classes >> i & 1U) != 0) one.classes.push_back(static_cast<AcidClass>(i));
      one.profile.leave_out = fields.flag("leave-out");
      const double buffer = fields.number("unknown").value_or(0);
      const double ph = fields.number("ph").value_or(7);
      fields.done();
      one.profile.by_default = true;
      one.profile.inert = !one.profile.leave_out && buffer == 0;
      one.profile.own_ph = {ph, ph, ph};
      if (unknown)
        for (AcidAmounts& mol : one.profile.mol) mol[*unknown] = buffer * per_milli;
      data_.settle(one.profile);
      data_.unknown_ = one.profile;  // the last one
      data_.defaults_.push_back(std::move(one));
    }
  }

  void bounds(const yaml::Node& map) {
    Fields fields(map, "bounds", sink_);
    data_.bounds_.limit = fields.number("limit").value_or(0);
    data_.bounds_.above = fields.number("above").value_or(1);
    data_.bounds_.below = fields.number("below").value_or(1);
    data_.bounds_.jar_grams_per_ml = fields.number("g-per-ml").value_or(1);
    fields.done();
    if (data_.bounds_.limit <= 0) sink_.add(map.at, "bounds: 'limit' is missing");
    if (data_.bounds_.above < 1 || data_.bounds_.below > 1 || data_.bounds_.below <= 0)
      sink_.add(map.at, "bounds must lean to the unsafe side: above 1 or more, below 1 or less");
  }

 private:
  void addition(const yaml::Node& node) {
    Fields fields(node, "addition", sink_);
    const std::string id = fields.text("food", true);
    const std::string acid = fields.text("acid");
    AcidProfile profile;
    profile.leans = false;
    profile.by_volume = fields.flag("by-volume");
    profile.grams_per_ml = fields.number("g-per-ml").value_or(1);
    profile.usual_percent = fields.number("percent").value_or(0);
    profile.strict_share = fields.number("strict-share").value_or(1);
    const double bound = fields.number("bound-percent").value_or(profile.usual_percent);
    const auto strict = fields.number("strict-percent");
    const auto base_at_ph = fields.number("base-at");
    const double base = fields.number("base-meq-per-g").value_or(0);  // which is eq per kg
    profile.from_memory = read_origin(fields, true);
    fields.done();
    const foods::Food* food = catalogue_.find(id);
    const auto index = data_.acid(acid);
    if (food == nullptr) sink_.add(node.at, "addition: '" + id + "' is no food of the catalogue");
    if (!acid.empty() && !index) sink_.add(node.at, "addition: '" + acid + "' is no weak acid listed");
    if (food == nullptr || (!acid.empty() && !index)) return;
    if (index) {
      profile.acid = *index;
      profile.grams_per_mol = data_.grams_per_mol_[*index];
      data_.set_strength(profile, profile.usual_percent);
      const double per_percent = profile.mol[0][profile.acid] / profile.usual_percent;
      profile.mol[index_of(Level::bound)][profile.acid] = bound * per_percent;
      if (strict) profile.mol[index_of(Level::strict)][profile.acid] = *strict * per_percent;
    }
    if (base_at_ph) {
      profile.own_ph = {*base_at_ph, *base_at_ph, *base_at_ph};
      data_.settle(profile);
    }
    for (double& b : profile.base) b += base;
    data_.rows_.push_back({food, profile});
  }

  AcidData& data_;
  const foods::Catalogue& catalogue_;
  ErrorSink sink_;
};

/// Foods with their composition.
class FoodRows {
 public:
  FoodRows(AcidData& data, const foods::Catalogue& catalogue, ErrorSink sink)
      : data_(data), catalogue_(catalogue), sink_(sink) {}

  void load(const yaml::Node& list) {
    for (const yaml::Node& node : list.items) food(node);
    for (const auto& [node, like, place] : likes_) resolve(*node, like, place);
    data_.sort();
  }

 private:
  struct Like {
    const yaml::Node* node;
    std::string id;
    std::size_t row;
  };

  void food(const yaml::Node& node) {
    Fields fields(node, "acidity", sink_);
    const std::string id = fields.text("food", true);
    const std::string like = fields.text("like");
    AcidProfile profile;
    read_ph(fields.find("ph"), profile);
    const yaml::Node* acids = fields.find("acids");
    if (acids != nullptr)
      for (const yaml::Entry& entry : acids->entries) amount(entry, profile);
    fields.list("entries");
    profile.from_memory = read_origin(fields, false);
    fields.done();
    const foods::Food* food = catalogue_.find(id);
    if (food == nullptr) {
      sink_.add(node.at, "acidity: '" + id + "' is no food of the catalogue");
      return;
    }
    if (acids == nullptr && like.empty()) sink_.add(node.at, "acidity: `acids:` or `like:` is missing");
    if (!like.empty()) likes_.push_back({&node, like, data_.rows_.size()});
    data_.settle(profile);
    data_.rows_.push_back({food, profile});
  }

  void read_ph(const yaml::Node* node, AcidProfile& profile) {
    profile.own_ph = data_.unknown_.own_ph;
    if (node == nullptr || node->is_scalar()) {
      if (node == nullptr || node->text != "unknown")
        sink_.add(node == nullptr ? Position{} : node->at, "acidity: `ph:` is three numbers, or unknown");
      return;
    }
    const auto ph = numbers(node, sink_);
    if (ph.size() == 3 && ph[0] <= ph[1] && ph[1] <= ph[2])
      profile.own_ph = {ph[1], ph[2], ph[2]};
    else
      sink_.add(node->at, "acidity: `ph:` is the lowest, typical and highest pH");
  }

  void amount(const yaml::Entry& entry, AcidProfile& profile) {
    const auto acid = data_.acid(entry.key);
    const auto value = checks::number_of(entry.value);
    if (!acid || !value || *value < 0) {
      sink_.add(entry.key_at,
                "acidity: '" + std::string(entry.key) + "' must be a weak acid with its mmol per kg");
      return;
    }
    for (AcidAmounts& mol : profile.mol) mol[*acid] = *value * per_milli;
  }

  void resolve(const yaml::Node& node, const std::string& like, std::size_t place) {
    const auto found = std::find_if(data_.rows_.begin(), data_.rows_.end(),
                                    [&](const auto& row) { return row.food->id == like; });
    if (found == data_.rows_.end()) {
      sink_.add(node.at, "acidity: like: '" + like + "' has no row in this file");
      return;
    }
    data_.rows_[place].profile.mol = found->profile.mol;
    data_.settle(data_.rows_[place].profile);
  }

  AcidData& data_;
  const foods::Catalogue& catalogue_;
  ErrorSink sink_;
  std::vector<Like> likes_;
};

void AcidData::sort() {
  std::stable_sort(rows_.begin(), rows_.end(),
                   [](const Row& a, const Row& b) { return a.food->id < b.food->id; });
}

void AcidData::load_acids(std::string_view file, const yaml::Document& document,
                          const foods::Catalogue& catalogue, std::vector<foods::LoadError>& errors) {
  const ErrorSink sink{file, errors};
  Fields fields(document.root(), "acids", sink);
  AcidLoader loader(*this, catalogue, sink);
  fields.text("constants-source", true);
  if (const auto* list = fields.find("weak-acids")) loader.acids(*list);
  if (const auto* list = fields.find("additions")) loader.additions(*list);
  if (const auto* list = fields.find("defaults")) loader.defaults(*list);
  if (const auto* map = fields.find("bounds")) loader.bounds(*map);
  fields.done();
  sort();
}

void AcidData::load_foods(std::string_view file, const yaml::Document& document,
                          const foods::Catalogue& catalogue, std::vector<foods::LoadError>& errors) {
  const ErrorSink sink{file, errors};
  Fields fields(document.root(), "acidity", sink);
  fields.text("acidity-source", true);
  if (const auto* list = fields.find("acidity")) FoodRows(*this, catalogue, sink).load(*list);
  fields.done();
}

}  // namespace sealworthy::science
