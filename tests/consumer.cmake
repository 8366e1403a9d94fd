# SPDX-License-Identifier: MIT
# Installs into a staging folder, moves it, and builds and runs a project outside the tree with it.
if(SEAMTURN_SANITIZE)
  add_test(NAME consumer COMMAND ${CMAKE_COMMAND} -E echo
                                 "skipped: a plain program cannot load plugins built with sanitizers")
  set_tests_properties(consumer PROPERTIES SKIP_REGULAR_EXPRESSION "skipped:")
  return()
endif()

set(staging ${PROJECT_BINARY_DIR}/tests/staging)
set(moved ${PROJECT_BINARY_DIR}/tests/staging_moved)
add_test(NAME consumer.clean COMMAND ${CMAKE_COMMAND} -E rm -rf ${staging} ${moved}
                                     ${PROJECT_BINARY_DIR}/tests/consumer_build)
add_test(NAME consumer.install COMMAND ${CMAKE_COMMAND} --install ${PROJECT_BINARY_DIR} --prefix
                                       ${staging})
add_test(NAME consumer.move COMMAND ${CMAKE_COMMAND} -E rename ${staging} ${moved})
add_test(
  NAME consumer.build_and_run
  COMMAND
    ${CMAKE_CTEST_COMMAND} --build-and-test ${CMAKE_CURRENT_SOURCE_DIR}/consumer
    ${PROJECT_BINARY_DIR}/tests/consumer_build --build-generator ${CMAKE_GENERATOR} --build-options
    -DCMAKE_PREFIX_PATH=${moved} -DCMAKE_CXX_COMPILER=${CMAKE_CXX_COMPILER}
    -DCMAKE_BUILD_TYPE=Release --test-command consumer)

set_tests_properties(consumer.clean PROPERTIES FIXTURES_SETUP consumer_clean)
set_tests_properties(consumer.install PROPERTIES FIXTURES_SETUP consumer_install FIXTURES_REQUIRED
                                                                                 consumer_clean)
set_tests_properties(consumer.move PROPERTIES FIXTURES_SETUP consumer_staging FIXTURES_REQUIRED
                                                                              consumer_install)
set_tests_properties(
  consumer.build_and_run PROPERTIES FIXTURES_REQUIRED consumer_staging FIXTURES_SETUP
                                                                       consumer_programs)

# The program of docs/cpp.md: colder, so more heating.
add_test(NAME consumer.plan_it COMMAND ${PROJECT_BINARY_DIR}/tests/consumer_build/plan_it
                                       ${PROJECT_SOURCE_DIR}/joints/bracket.xml)
set_tests_properties(
  consumer.plan_it
  PROPERTIES FIXTURES_REQUIRED "consumer_programs;consumer_staging" PASS_REGULAR_EXPRESSION
             "^20 degC: [0-9.]+ s, [0-9.]+ EUR\n0 degC: [0-9.]+ s, [0-9.]+ EUR\n$")

# The moved program must still find its plugins.
if(TARGET seamturn_cli)
  add_test(NAME consumer.program COMMAND ${moved}/bin/seamturn plugins)
  set_tests_properties(consumer.program PROPERTIES FIXTURES_REQUIRED consumer_staging
                                                   PASS_REGULAR_EXPRESSION "procedure-sheet")
endif()
