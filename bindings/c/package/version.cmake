# cmake -DTO=… -DVERSION=… -DPOINTER=… -P version.cmake
#
# CMake's own answer to which versions fit: before 1.0 those of the same minor version, and only for
# pointers of the same width.

include(CMakePackageConfigHelpers)
set(CMAKE_SIZEOF_VOID_P ${POINTER})
write_basic_package_version_file("${TO}" VERSION ${VERSION} COMPATIBILITY SameMinorVersion)
