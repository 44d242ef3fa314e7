// What the leak checker of a sanitized build forgives each test program.
#ifdef __SANITIZE_ADDRESS__
// Fontconfig keeps its fonts until the program ends and calls that no leak; neither do we. Read by the leak
// checker.
extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() {
    return "leak:libfontconfig\n";
}
#endif
