# find_package(cupwright) gives
#   cupwright::cupwright  the static archive: one object, nothing undefined, only cupwright_* global
#   cupwright::shared     the shared library, where the package has one

get_filename_component(_cupwright_prefix "${CMAKE_CURRENT_LIST_DIR}/../../.." ABSOLUTE)

if(NOT TARGET cupwright::cupwright)
  add_library(cupwright::cupwright STATIC IMPORTED)
  set_target_properties(cupwright::cupwright PROPERTIES
    IMPORTED_LOCATION "${_cupwright_prefix}/lib/libcupwright.a"
    INTERFACE_INCLUDE_DIRECTORIES "${_cupwright_prefix}/include")
  if(CMAKE_SYSTEM_NAME STREQUAL "Generic")
    # Only what is called goes into the image.
    target_link_options(cupwright::cupwright INTERFACE "-Wl,--gc-sections")
  endif()
endif()

if(NOT TARGET cupwright::shared AND EXISTS "${_cupwright_prefix}/lib/libcupwright.so")
  add_library(cupwright::shared SHARED IMPORTED)
  set_target_properties(cupwright::shared PROPERTIES
    IMPORTED_LOCATION "${_cupwright_prefix}/lib/libcupwright.so"
    INTERFACE_INCLUDE_DIRECTORIES "${_cupwright_prefix}/include")
endif()

unset(_cupwright_prefix)
