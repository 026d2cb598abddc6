#include "noonleaf/garden/journal_undo.hpp"

#include <cstddef>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/file_problems.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t deepest_chain = 1000;  // undo of an undo of an undo …: nobody means that

/// Follows the undos of a journal from the one that nobody undid.
class UndoChain {
 public:
  UndoChain(const Journal& entries, std::string_view shown_name)
      : entries_(entries),
        shown_name_(shown_name),
        undone_by_(entries.size()),
        marks_(entries.size(), Mark::unknown) {
    std::unordered_map<std::string_view, std::vector<std::size_t>> by_id;
    for (std::size_t index = 0; index < entries.size(); ++index) {
      if (!entries[index].id.empty()) by_id[entries[index].id].push_back(index);
    }
    for (std::size_t index = 0; index < entries.size(); ++index) {
      if (entries[index].event != JournalEvent::undo) continue;
      const auto found = by_id.find(entries[index].undoes);
      if (found == by_id.end()) {
        refuse(entries[index], "no entry has the id \"" + entries[index].undoes + "\"",
               "take the id from journal.csv");
      } else if (found->second.size() > 1) {
        refuse(entries[index], "several entries have the id \"" + entries[index].undoes + "\"",
               "give each entry an id of its own in journal.csv");
      } else {
        undone_by_[found->second.front()].push_back(index);
      }
    }
  }

  /// Whether no standing undo names the entry.
  bool stands(std::size_t index, std::size_t depth = 0) {
    if (marks_[index] == Mark::asked || depth > deepest_chain) {
      refuse(entries_[index], "these undos run in a circle", "take one of them out");
      return true;
    }
    if (marks_[index] == Mark::unknown) {
      marks_[index] = Mark::asked;
      bool undone = false;
      for (const std::size_t undo : undone_by_[index]) undone = stands(undo, depth + 1) || undone;
      marks_[index] = undone ? Mark::undone : Mark::standing;
    }
    return marks_[index] == Mark::standing;
  }

  FileProblems& problems() { return problems_; }

 private:
  enum class Mark { unknown, asked, standing, undone };

  void refuse(const JournalEntry& entry, std::string message, std::string fix) {
    Problem problem;
    problem.file = shown_name_;
    problem.line = entry.line;
    problem.field = "undoes";
    problem.text = entry.undoes;
    problem.message = std::move(message);
    problem.fix = std::move(fix);
    problems_.add(std::move(problem));
  }

  const Journal& entries_;
  std::string shown_name_;
  std::vector<std::vector<std::size_t>> undone_by_;
  std::vector<Mark> marks_;
  FileProblems problems_;
};

}  // namespace

Journal without_undone(Journal entries, std::string_view shown_name) {
  UndoChain chain(entries, shown_name);
  std::vector<std::size_t> standing;
  for (std::size_t index = 0; index < entries.size(); ++index) {
    if (chain.stands(index) && entries[index].event != JournalEvent::undo) standing.push_back(index);
  }
  chain.problems().throw_if_any();
  Journal result;
  for (const std::size_t index : standing) result.push_back(std::move(entries[index]));
  return result;
}

}  // namespace v1
}  // namespace noonleaf
