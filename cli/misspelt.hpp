#pragma once
// What is said about a command line that names no verb, a verb that there is not, or an option that the verb has not.

#include <span>
#include <string>
#include <vector>

#include "cli/verb.hpp"

namespace pulsewright {

/// Every verb with its line of help, for somebody who typed none.
std::string verb_list(std::span<const Verb> verbs);

/// The fault of a first word that looks like a verb but is none; empty where there is nothing to say.
std::string misspelt_verb(const std::string& first_word, std::span<const Verb> verbs);

/// "did you mean --report?" for the first word that begins with a dash and is none of the options; empty where no
/// option is near.
std::string misspelt_option(const std::vector<std::string>& words, const std::vector<std::string>& options);

}  // namespace pulsewright
