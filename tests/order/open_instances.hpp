// SPDX-License-Identifier: MIT
// Reads the open instances of ../shared/data/order, when they are there. They are never part of the
// project: sequential ordering problems of TSPLIB95, and the groups with precedence of Salman,
// Ekstedt and Damaschke 2020.
#pragma once

#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>

#include "order/detail_tour.hpp"
#include "repository.hpp"

namespace seamturn::tests {

inline std::filesystem::path open_instances() {
  return repository().parent_path() / "shared/data/order";
}

/// Weights up to and including the section's end; stops before the next word.
inline std::vector<double> read_weights(std::istream& in, std::size_t count) {
  std::vector<double> weights;
  double weight = 0.0;
  while (weights.size() < count && in >> weight) weights.push_back(weight);
  return weights;
}

/// Line by line up to a head; values of "KEY : value" lines on the way.
inline int skip_to(std::istream& in, const std::string& head, const std::string& key) {
  int value = 0;
  std::string line;
  while (std::getline(in, line) && line.rfind(head, 0) != 0) {
    const std::size_t colon = line.find(':');
    const bool ours = line.rfind(key, 0) == 0 && colon != std::string::npos;
    if (ours) value = std::stoi(line.substr(colon + 1));
  }
  return value;
}

/// -1 in row i, column j: j before i. The direct move from first to last is forbidden by its
/// weight.
inline std::optional<order::TourProblem> read_sop(const std::string& name) {
  std::ifstream in(open_instances() / "sop" / (name + ".sop"));
  if (!in) return std::nullopt;
  const auto count = static_cast<std::size_t>(skip_to(in, "EDGE_WEIGHT_SECTION", "DIMENSION"));
  const std::vector<double> weights = read_weights(in, count * count + 1);
  order::TourProblem problem;
  problem.before.resize(count);
  constexpr double forbidden = 1000000.0;
  for (std::size_t i = 0; i < count; ++i) {
    problem.group_of.push_back(static_cast<int>(i));
    problem.vertices.push_back({static_cast<int>(i)});
    for (std::size_t j = 0; j < count; ++j) {
      const double weight = weights.at(1 + i * count + j);  // the first repeats the dimension
      const bool never = i == j || weight < 0.0 || weight >= forbidden;
      if (i != j && weight < 0.0) problem.before[i].push_back(static_cast<int>(j));
      problem.cost.push_back(never ? order::never_s : weight);
    }
  }
  return problem;
}

/// A closed tour from the one vertex of the first group: a group behind all others ends it there.
inline std::optional<order::TourProblem> read_groups(const std::string& name) {
  std::ifstream in(open_instances() / "pcgtsp" / (name + ".pcglns"));
  if (!in) return std::nullopt;
  const auto count = static_cast<std::size_t>(skip_to(in, "EDGE_WEIGHT_SECTION", "DIMENSION"));
  const std::vector<double> weights = read_weights(in, count * count);
  in.clear();
  skip_to(in, "GTSP_SET_SECTION", "-");
  order::TourProblem problem;
  problem.group_of.assign(count + 1, 0);
  std::string line;
  while (std::getline(in, line) && line.rfind("GTSP_SET_ORDERING", 0) != 0) {
    std::istringstream words(line);
    int word = 0;
    if (!(words >> word)) continue;
    std::vector<int> vertices;
    while (words >> word && word > 0) vertices.push_back(word - 1);
    for (const int vertex : vertices) {
      problem.group_of[static_cast<std::size_t>(vertex)] =
          static_cast<int>(problem.vertices.size());
    }
    problem.vertices.push_back(vertices);
  }
  problem.before.resize(problem.vertices.size());
  while (std::getline(in, line)) {  // "1 2 3 -1": the first before all others
    std::istringstream words(line);
    int first = 0;
    int word = 0;
    if (!(words >> first)) continue;
    while (words >> word && word > 0) {
      problem.before[static_cast<std::size_t>(word) - 1].push_back(first - 1);
    }
  }
  problem.group_of.back() = static_cast<int>(problem.vertices.size());
  problem.vertices.push_back({static_cast<int>(count)});
  problem.before.emplace_back();
  for (std::size_t i = 0; i <= count; ++i) {
    for (std::size_t j = 0; j <= count; ++j) {
      const bool same = problem.group_of[i] == problem.group_of[j];
      const bool outside = i == count || j == 0 || (i == 0 && j == count);
      const double weight = i == count ? -1.0 : weights.at(i * count + (j == count ? 0 : j));
      const bool never = same || outside || weight < 0.0;
      problem.cost.push_back(never ? order::never_s : weight);
    }
  }
  return problem;
}

}  // namespace seamturn::tests
