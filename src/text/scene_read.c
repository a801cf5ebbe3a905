#include "text/scene_read.h"

#include "text/scene_explain.h"
#include "text/scene_fields.h"

static recede_text_status read_tree(const recede_tree *tree, const recede_files *files,
                                    recede_scene *scene, recede_text_error *error)
{
    recede_reader reader = {tree, scene, error, files, ""};
    recede_error core;
    recede_scene_default(scene);
    recede_text_status status = recede_fields_read(&reader, 0, &recede_scene_fields, scene);
    if (!status && recede_scene_check(scene, &core))
        status = recede_explain(tree, &core, error);
    return status;
}

recede_text_status recede_scene_read(const char *bytes, size_t size, const recede_files *files,
                                     const recede_allocator *allocator, recede_scene *out,
                                     recede_text_error *error)
{
    recede_tree tree;
    if (size > RECEDE_SCENE_MOST_BYTES)
        return recede_text_refuse(error, 0, 0, "the scene has %zu bytes; at most %zu are read",
                                  size, RECEDE_SCENE_MOST_BYTES);
    recede_text_status status = recede_tree_read(bytes, size, allocator, &tree, error);
    if (!status)
        status = read_tree(&tree, files, out, error);
    recede_tree_free(&tree);
    return status;
}

recede_text_status recede_scene_explain(const char *bytes, size_t size,
                                        const recede_allocator *allocator,
                                        const recede_error *core, recede_text_error *error)
{
    recede_tree tree;
    recede_text_status status = recede_tree_read(bytes, size, allocator, &tree, error);
    if (!status)
        status = recede_explain(&tree, core, error);
    recede_tree_free(&tree);
    return status;
}
