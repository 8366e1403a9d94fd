# SPDX-License-Identifier: MIT
# What `cmake --install` lays down: program, library, headers, plugins, schemas, the standards
# library, and a package for find_package(seamturn). The tree may be moved as a whole.
include(CMakePackageConfigHelpers)

set(SEAMTURN_PACKAGE_SUBDIR lib/cmake/seamturn)
set(SEAMTURN_SHARE_SUBDIR share/seamturn)

install(DIRECTORY ${PROJECT_SOURCE_DIR}/core/include/seamturn DESTINATION include)
install(
  TARGETS seamturn seamturn_plugin_abi
  EXPORT seamturn_targets
  ARCHIVE DESTINATION lib)
install(
  EXPORT seamturn_targets
  NAMESPACE seamturn::
  FILE seamturn-targets.cmake
  DESTINATION ${SEAMTURN_PACKAGE_SUBDIR})
if(TARGET seamturn_cli)
  install(TARGETS seamturn_cli RUNTIME DESTINATION bin)
endif()

install(
  DIRECTORY ${PROJECT_SOURCE_DIR}/docs/schemas
  DESTINATION ${SEAMTURN_SHARE_SUBDIR}
  FILES_MATCHING
  PATTERN "*.xsd")
install(DIRECTORY ${PROJECT_SOURCE_DIR}/joints/library DESTINATION ${SEAMTURN_SHARE_SUBDIR})
install(FILES ${PROJECT_SOURCE_DIR}/LICENSE DESTINATION ${SEAMTURN_SHARE_SUBDIR})

configure_package_config_file(
  ${PROJECT_SOURCE_DIR}/core/seamturn-config.cmake.in
  ${PROJECT_BINARY_DIR}/seamturn-config.cmake
  INSTALL_DESTINATION ${SEAMTURN_PACKAGE_SUBDIR}
  PATH_VARS SEAMTURN_PLUGIN_SUBDIR SEAMTURN_SHARE_SUBDIR)
# 0.x: any minor version may break.
write_basic_package_version_file(
  ${PROJECT_BINARY_DIR}/seamturn-config-version.cmake
  VERSION ${PROJECT_VERSION}
  COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/seamturn-config.cmake
              ${PROJECT_BINARY_DIR}/seamturn-config-version.cmake
        DESTINATION ${SEAMTURN_PACKAGE_SUBDIR})
