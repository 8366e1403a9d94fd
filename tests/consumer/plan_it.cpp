// SPDX-License-Identifier: MIT
// The smallest program that plans: what does a cold shop cost?
#include <iostream>

#include "seamturn/io/read.hpp"
#include "seamturn/planner/planner.hpp"

int main(int, char** argv) try {
  using namespace seamturn;
  planner::Inputs inputs = io::read_inputs(argv[1]);
  for (const double ambient_c : {20.0, 0.0}) {
    inputs.weldment.ambient_c = ambient_c;
    const plan::Plan plan = planner::make_plan(inputs);
    std::cout << ambient_c << " degC: " << plan.cycle_s << " s, " << plan.estimate.total << ' '
              << plan.estimate.currency << '\n';
  }
  return 0;
} catch (const seamturn::base::InputError& error) {
  for (const auto& finding : error.findings()) {
    std::cerr << seamturn::base::finding_text(finding) << '\n';
  }
  return 1;
} catch (const seamturn::base::UnavailableError& error) {
  std::cerr << error.what() << '\n';
  return 3;
}
