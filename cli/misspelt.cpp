#include "cli/misspelt.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "shared/words.hpp"

namespace pulsewright {

std::string verb_list(std::span<const Verb> verbs) {
  std::string text = "say what to do:\n";
  for (const Verb& verb : verbs) text += fmt::format("  pulsewright {:8} {}\n", verb.name, verb.help);
  return text + "  pulsewright VERB --help lists the options of a verb";
}

std::string misspelt_verb(const std::string& first_word, std::span<const Verb> verbs) {
  if (first_word.empty() || first_word.front() == '-') return {};
  std::vector<std::string> names;
  for (const Verb& verb : verbs) names.emplace_back(verb.name);
  if (std::ranges::find(names, first_word) != names.end()) return {};
  const std::string nearest = nearest_word(first_word, names);
  return "there is no verb " + in_quotes(first_word) + "; " +
         (nearest.empty() ? "verbs: " + listed(names) : "did you mean '" + nearest + "'?");
}

std::string misspelt_option(const std::vector<std::string>& words, const std::vector<std::string>& options) {
  for (const std::string& word : words) {
    const std::string name = word.substr(0, word.find('='));
    if (name.size() < 2 || !name.starts_with('-') || std::ranges::find(options, name) != options.end()) continue;
    const std::string nearest = nearest_word(name, options);
    return nearest.empty() ? "" : "did you mean " + nearest + "?";
  }
  return {};
}

}  // namespace pulsewright
