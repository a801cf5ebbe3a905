#include "text/ladder_write.h"

#include "text/columns.h"
#include "text/plan_write.h"
#include "text/scene_write.h"
#include "text/words.h"
#include "text/words_ladder.h"

/* Words put together by one of the functions of words_ladder. */
static void write_words(recede_json *json, const char *key, recede_buffer *words)
{
    recede_json_string(json, key, recede_buffer_string(words));
    json->out->failed |= words->failed;
    recede_buffer_free(words);
}

static void write_row(recede_json *json, const recede_ladder *ladder, const recede_rung *rung,
                      int row)
{
    static const char *const keys[RECEDE_LADDER_ROWS] = {"lit", "shadow", "white"};
    recede_json_object(json, keys[row]);
    recede_wash_write_members(json, ladder->palette, &rung->row[row], NULL);
    recede_json_numbers(json, "own_light", rung->own[row].at, RECEDE_BANDS);
    recede_json_numbers(json, "air_light", rung->air[row].at, RECEDE_BANDS);
    recede_json_end_object(json);
}

static void write_rung(recede_json *json, const recede_ladder *ladder, size_t air, size_t rung)
{
    const recede_rung *at = &ladder->air[air].rung[rung];
    recede_buffer words;
    recede_json_object(json, NULL);
    recede_json_number(json, "distance_m", at->distance_m);
    recede_buffer_start(&words, json->out->allocator);
    recede_words_rung(&words, ladder, air, rung);
    write_words(json, "caption", &words);
    for (int row = 0; row < RECEDE_LADDER_ROWS; row++)
        write_row(json, ladder, at, row);
    recede_json_end_object(json);
}

static void write_air(recede_json *json, const recede_ladder *ladder, size_t air)
{
    recede_json_object(json, NULL);
    recede_json_number(json, "visibility_km", ladder->air[air].visibility_km);
    recede_colour_write(json, "horizon", &ladder->air[air].horizon, NULL);
    recede_json_array(json, "rungs");
    for (size_t i = 0; i < ladder->wish.rung_count; i++)
        write_rung(json, ladder, air, i);
    recede_json_end_array(json);
    recede_json_end_object(json);
}

static void write_lessons(recede_json *json, const recede_ladder *ladder)
{
    recede_json_array(json, "lessons");
    for (size_t i = 0; i < RECEDE_LESSONS; i++) {
        recede_buffer words;
        recede_buffer_start(&words, json->out->allocator);
        recede_words_lesson_heading(&words, ladder, i);
        recede_buffer_text(&words, ". ");
        recede_words_lesson(&words, ladder, i);
        write_words(json, NULL, &words);
    }
    recede_json_end_array(json);
}

void recede_ladder_write(const recede_ladder *ladder, recede_buffer *out)
{
    recede_json json;
    recede_buffer words;
    recede_json_start(&json, out);
    recede_json_object(&json, NULL);
    recede_buffer_start(&words, out->allocator);
    recede_words_ladder_title(&words, ladder);
    write_words(&json, "title", &words);
    recede_json_object(&json, "scene");
    recede_scene_write_members(ladder->scene, &json);
    recede_json_end_object(&json);
    recede_json_array(&json, "airs");
    for (size_t air = 0; air < ladder->wish.air_count; air++)
        write_air(&json, ladder, air);
    recede_json_end_array(&json);
    write_lessons(&json, ladder);
    recede_json_end_object(&json);
    recede_buffer_text(out, "\n");
}

/* ---- text to read out */

enum { WIDTH = 100 };

static void tell(recede_buffer *out, recede_buffer *words, size_t indent)
{
    recede_columns_text(out, recede_buffer_string(words), WIDTH, indent);
    out->failed |= words->failed;
    recede_buffer_free(words);
    recede_buffer_start(words, out->allocator);
}

static void tell_air(const recede_ladder *ladder, size_t air, recede_buffer *words,
                     recede_buffer *out)
{
    recede_buffer_format(words, "%s, visibility ", recede_words_ladder_air(ladder, air));
    recede_words_distance(words, 1000.0 * ladder->air[air].visibility_km);
    recede_buffer_text(out, "\n");
    tell(out, words, 0);
    for (size_t i = 0; i < ladder->wish.rung_count; i++) {
        recede_buffer_text(words, "- ");
        recede_words_rung(words, ladder, air, i);
        tell(out, words, 2);
    }
}

void recede_ladder_tell(const recede_ladder *ladder, recede_buffer *out)
{
    recede_buffer words;
    recede_buffer_start(&words, out->allocator);
    recede_words_ladder_title(&words, ladder);
    tell(out, &words, 0);
    recede_words_ladder_subject(&words, ladder);
    tell(out, &words, 0);
    recede_buffer_text(out, "\n");
    for (size_t i = 0; i < RECEDE_LESSONS; i++) {
        recede_words_lesson_heading(&words, ladder, i);
        recede_buffer_text(&words, ". ");
        recede_words_lesson(&words, ladder, i);
        tell(out, &words, 0);
    }
    recede_words_ladder_scale(&words, ladder);
    if (words.size)
        tell(out, &words, 0);
    for (size_t air = 0; air < ladder->wish.air_count; air++)
        tell_air(ladder, air, &words, out);
}
