// SPDX-License-Identifier: MIT
// Reading plan.xml in a plugin: a tree, look-ups by id, numbers as text. No part of the core.
#pragma once

#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace seamturn::plan_reader {

/// A plan as a tree. Throws std::runtime_error, with the reason, for anything that is no plan.xml
/// of a version known here.
class PlanTree {
 public:
  explicit PlanTree(std::string_view plan_xml);
  [[nodiscard]] pugi::xml_node root() const { return root_; }
  /// root/<group>/<element id="...">; throws when there is none.
  [[nodiscard]] pugi::xml_node entry(const char* group, const char* element, const char* id) const;
  /// The seam of an id and its joint is its parent; throws when there is none.
  [[nodiscard]] pugi::xml_node seam(const char* id) const;

 private:
  pugi::xml_document document_;
  pugi::xml_node root_;
};

/// Documents of which there is one a procedure, named after it: FOLDER/ID.ENDING.
class ProcedureDocuments {
 public:
  ProcedureDocuments(std::string_view folder, std::string_view ending)
      : folder_(folder), ending_(ending) {}
  /// Throws when an id cannot be a file name.
  [[nodiscard]] std::vector<std::string> names(const PlanTree& plan) const;
  /// Id of the procedure a name stands for; throws when the plan gives no such document.
  [[nodiscard]] std::string procedure_of(const PlanTree& plan, std::string_view name) const;

 private:
  [[nodiscard]] std::string name_of(const std::string& id) const;
  std::string folder_;
  std::string ending_;
};

/// "Hub, revision C", of the weldment of a plan.
[[nodiscard]] std::string title_of(pugi::xml_node weldment);
/// The text of an attribute; empty when absent.
[[nodiscard]] const char* text(pugi::xml_node node, const char* attribute);
[[nodiscard]] bool is_true(pugi::xml_node node, const char* attribute);

/// The number of an attribute, read independently of the locale; throws when it is none.
[[nodiscard]] double number(pugi::xml_node node, const char* attribute);
/// A number with at most that many decimals, trailing zeros cut.
[[nodiscard]] std::string rounded(double value, int decimals);

/// Copies attributes by name, text unchanged; absent ones are passed over.
void copy(pugi::xml_node from, pugi::xml_node to, const std::vector<const char*>& attributes);
/// Copies numbers with at most that many decimals; absent ones are passed over, others throw.
void copy_rounded(pugi::xml_node from,
                  pugi::xml_node to,
                  int decimals,
                  const std::vector<const char*>& attributes);
void put(pugi::xml_node node, const char* attribute, std::string_view value);
/// The temperatures of a gate in whole degrees: the lower one up, the upper one down, so that
/// rounding never widens what is permitted.
void put_gate_limits(pugi::xml_node gate, pugi::xml_node heat);
/// Copies all cautions below `from` to below `to`.
void copy_cautions(pugi::xml_node from, pugi::xml_node to);

/// A new document with declaration and root element.
[[nodiscard]] pugi::xml_node start_document(pugi::xml_document& document,
                                            const char* root,
                                            const char* root_namespace);
[[nodiscard]] std::string document_text(const pugi::xml_document& document);

}  // namespace seamturn::plan_reader
