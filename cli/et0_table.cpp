#include "et0_table.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

constexpr std::size_t flush_bytes = 1 << 16;

}  // namespace

Et0Table::Et0Table(const Et0Arguments& arguments, Heading heading)
    : arguments_(arguments), heading_(std::move(heading)) {
  if (arguments_.format == Et0Arguments::Format::json) {
    block_ = fmt::format(
        "{{\"shape\": \"noonleaf.et0\", \"version\": 1, \"equation\": \"{}\", \"surface\": \"{}\", \"{}\": [",
        arguments_.equation == Et0Arguments::Equation::asce ? "asce" : "fao56",
        arguments_.surface == Et0Arguments::Surface::tall ? "tall" : "short", heading_.rows);
    return;
  }
  block_ = fmt::format("{},et0_mm,estimated", heading_.key);
  for (const std::string_view header : heading_.detail) block_ += fmt::format(",{}", header);
  block_ += "\n";
}

void Et0Table::add(const Et0Row& row) {
  if (arguments_.format == Et0Arguments::Format::json) {
    add_json(row);
  } else {
    add_csv(row);
  }
  if (block_.size() > flush_bytes) flush();
}

void Et0Table::end() {
  if (arguments_.format == Et0Arguments::Format::json) block_ += "\n]}\n";
  flush();
}

std::string Et0Table::number(double value) const {
  if (is_missing(value)) return {};
  std::string text = fmt::format("{:.{}f}", value, arguments_.precision);
  const bool is_zero = text.find_first_of("123456789") == std::string::npos;
  return is_zero && text.front() == '-' ? text.substr(1) : text;
}

void Et0Table::add_csv(const Et0Row& row) {
  block_ += fmt::format("{},{},{}", row.key, number(row.et0_mm), row.estimated);
  for (const double value : row.detail) block_ += "," + number(value);
  block_ += "\n";
}

void Et0Table::add_json(const Et0Row& row) {
  const auto value_text = [this](double value) {
    return is_missing(value) ? std::string("null") : number(value);
  };
  block_ += between_;
  block_ += fmt::format("{{\"{}\":\"{}\",\"et0_mm\":{},\"estimated\":{}", heading_.key, row.key,
                        value_text(row.et0_mm), nlohmann::json(row.estimated).dump());
  for (std::size_t index = 0; index < row.detail.size(); ++index) {
    block_ += fmt::format(",\"{}\":{}", heading_.detail[index], value_text(row.detail[index]));
  }
  block_ += "}";
  between_ = ",\n";
}

void Et0Table::flush() {
  print(block_);
  block_.clear();
}

}  // namespace noonleaf::cli
