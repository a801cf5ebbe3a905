#include "text/scene_write.h"

#include "text/scene_fields.h"

void recede_scene_write_members(const recede_scene *scene, recede_json *json)
{
    recede_fields_write(json, &recede_scene_fields, scene);
}

void recede_scene_write(const recede_scene *scene, recede_buffer *out)
{
    recede_json json;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_scene_write_members(scene, &json);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}
