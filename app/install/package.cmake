# The Debian package. tests/release/package builds one from nothing.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME luftpause)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "find the breaths in a recorded performance and script a commentary")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"Luftpause is for voice teachers who comment on recorded performances. It
finds breaths, phrases, register switches and notes in any sound or video
file, also under accompaniment, and says what speaks for each. It keeps the
teacher's moments and remarks, sums a performance up in a technique profile,
sets two performances of a piece side by side, and lays a script out against
the recording. It writes what the edit of a commentary video needs: a cue
sheet, captions, chapters, an edit list, stills and a guide movie that halts
where the teacher speaks.
.
It estimates from sound and diagnoses nothing. It never uses the network.
.
This package holds the window (luftpause-desk), the command line (luftpause)
and a sample.")
set(CPACK_PACKAGE_CONTACT "Luftpause developers <luftpause@example.org>") # a host that RFC 2606 keeps free of people
set(CPACK_DEBIAN_PACKAGE_SECTION sound)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_PRE_BUILD_SCRIPTS ${CMAKE_CURRENT_SOURCE_DIR}/package-folders.cmake)
set(CPACK_PROJECT_CONFIG_FILE ${CMAKE_CURRENT_BINARY_DIR}/package-day.cmake)
configure_file(package-day.cmake.in package-day.cmake @ONLY)
include(CPack)
