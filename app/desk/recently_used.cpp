#include "desk/recently_used.h"

#include <dlfcn.h>
#include <glib-object.h>

#include <string_view>

namespace luft::desk {
namespace {

std::string list_file;
void (*set_any)(GObject*, guint, const GValue*, GParamSpec*) = nullptr;

void set_property(GObject* manager, guint id, const GValue* value, GParamSpec* what) {
    if (std::string_view(what->name) != "filename") return set_any(manager, id, value, what);
    GValue ours = G_VALUE_INIT;
    g_value_init(&ours, G_TYPE_STRING);
    g_value_set_string(&ours, list_file.c_str());
    set_any(manager, id, &ours, what);
    g_value_unset(&ours);
}

} // namespace

void keep_recently_used_in(const std::string& file) {
    // Looked up in the running program: GTK comes with wxWidgets, and its headers are needed for nothing
    // else. Its setting gtk-recent-files-enabled is no way out: that empties the list of all programs.
    using TypeOf = GType (*)();
    const auto type_of = reinterpret_cast<TypeOf>(dlsym(RTLD_DEFAULT, "gtk_recent_manager_get_type"));
    if (type_of == nullptr || set_any != nullptr) return;
    list_file = file;
    // The file is set once, when the one manager is made; its class stays as long as the program.
    auto* manager = static_cast<GObjectClass*>(g_type_class_ref(type_of()));
    set_any = manager->set_property;
    manager->set_property = set_property;
}

} // namespace luft::desk
