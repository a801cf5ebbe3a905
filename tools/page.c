/* Puts the planning page together: one HTML file that needs no other.
 *
 *     page TEMPLATE STYLE MODULE WORKER SCENE SCRIPT... > planner.html
 *
 * The template's {{style}}, {{script}} and {{policy}} are filled in. The
 * scripts stand one after another in one function, before them as constants:
 * CORE, the WebAssembly module, deflated and in base64; WORKER, the worker's
 * script; SCENE, the first scene. The policy allows this style and this script
 * by their SHA-256, and no request to anywhere. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <zlib.h>

#include "sha256.h"

typedef struct {
    char *bytes;
    size_t size, room;
} text;

static _Noreturn void stop(const char *about, const char *why)
{
    fprintf(stderr, "page: %s: %s\n", about, why);
    exit(3);
}

static void add(text *out, const char *bytes, size_t size)
{
    if (!out->bytes || out->size + size + 1 > out->room) {
        out->room = 2 * (out->size + size) + 4096;
        out->bytes = realloc(out->bytes, out->room);
        if (!out->bytes)
            stop("the page", "not enough memory");
    }
    memcpy(out->bytes + out->size, bytes, size);
    out->size += size;
    out->bytes[out->size] = 0;
}

static void add_string(text *out, const char *string)
{
    add(out, string, strlen(string));
}

static text read_file(const char *path)
{
    text out = {0};
    char block[65536];
    FILE *in = fopen(path, "rb");
    if (!in)
        stop(path, "cannot be read");
    for (size_t got; (got = fread(block, 1, sizeof block, in)) > 0;)
        add(&out, block, got);
    if (ferror(in))
        stop(path, "cannot be read");
    fclose(in);
    add(&out, "", 0);
    return out;
}

static void add_base64(text *out, const unsigned char *bytes, size_t size)
{
    static const char digits[] =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t i = 0; i < size; i += 3) {
        size_t left = size - i;
        unsigned long bits = (unsigned long)bytes[i] << 16 |
                             (left > 1 ? (unsigned long)bytes[i + 1] << 8 : 0) |
                             (left > 2 ? bytes[i + 2] : 0);
        char four[] = {digits[bits >> 18 & 63], digits[bits >> 12 & 63],
                       left > 1 ? digits[bits >> 6 & 63] : '=', left > 2 ? digits[bits & 63] : '='};
        add(out, four, 4);
    }
}

/* A script's string; "</" would end the script element it stands in. */
static void add_quoted(text *out, const text *what)
{
    add_string(out, "\"");
    for (size_t i = 0; i < what->size; i++) {
        char c = what->bytes[i];
        if (c == '\n')
            add_string(out, "\\n");
        else if (c == '"' || c == '\\' || c == '/')
            add(out, (char[]){'\\', c}, 2);
        else
            add(out, &c, 1);
    }
    add_string(out, "\"");
}

static void add_module(text *out, const text *module)
{
    uLongf size = compressBound(module->size);
    unsigned char *packed = malloc(size);
    if (!packed ||
        compress2(packed, &size, (const Bytef *)module->bytes, module->size, 9) != Z_OK)
        stop("the module", "cannot be packed");
    add_string(out, "\"");
    add_base64(out, packed, size);
    add_string(out, "\"");
    free(packed);
}

static text script_of(char **words, int count)
{
    text module = read_file(words[0]), worker = read_file(words[1]), scene = read_file(words[2]);
    text out = {0};
    add_string(&out, "(() => {\n'use strict';\nconst CORE = ");
    add_module(&out, &module);
    add_string(&out, ";\nconst WORKER = ");
    add_quoted(&out, &worker);
    add_string(&out, ";\nconst SCENE = ");
    add_quoted(&out, &scene);
    add_string(&out, ";\n");
    for (int i = 3; i < count; i++) {
        text script = read_file(words[i]);
        add_string(&out, "\n");
        add(&out, script.bytes, script.size);
        free(script.bytes);
    }
    add_string(&out, "})();\n");
    if (strstr(out.bytes, "</script") || strstr(out.bytes, "<!--"))
        stop("the script", "holds what would end it");
    free(module.bytes);
    free(worker.bytes);
    free(scene.bytes);
    return out;
}

static void add_hash(text *out, const text *of)
{
    unsigned char hash[32];
    sha256((const unsigned char *)of->bytes, of->size, hash);
    add_string(out, "'sha256-");
    add_base64(out, hash, sizeof hash);
    add_string(out, "'");
}

static text policy_of(const text *style, const text *script)
{
    text out = {0};
    add_string(&out, "default-src 'none'; script-src ");
    add_hash(&out, script);
    add_string(&out, " 'wasm-unsafe-eval'; style-src ");
    add_hash(&out, style);
    add_string(&out, "; worker-src blob:; img-src blob: data:; base-uri 'none'; form-action 'none'");
    return out;
}

static void fill(text *out, const text *template, const char *const *keys, const text *values,
                 size_t count)
{
    const char *at = template->bytes;
    for (const char *next; (next = strstr(at, "{{"));) {
        add(out, at, (size_t)(next - at));
        size_t i = 0;
        while (i < count && strncmp(next, keys[i], strlen(keys[i])) != 0)
            i++;
        if (i == count)
            stop("the template", "holds a place that is not known");
        add(out, values[i].bytes, values[i].size);
        at = next + strlen(keys[i]);
    }
    add_string(out, at);
}

int main(int count, char **words)
{
    static const char *const keys[] = {"{{style}}", "{{script}}", "{{policy}}"};
    if (count < 7) {
        fprintf(stderr, "usage: page TEMPLATE STYLE MODULE WORKER SCENE SCRIPT... > FILE\n");
        return 2;
    }
    text template = read_file(words[1]), style = read_file(words[2]);
    text script = script_of(words + 3, count - 3), policy = policy_of(&style, &script);
    const text values[] = {style, script, policy};
    text out = {0};
    fill(&out, &template, keys, values, 3);
    if (fwrite(out.bytes, 1, out.size, stdout) != out.size || fflush(stdout))
        stop("the page", "cannot be written");
    const text used[] = {template, style, script, policy, out};
    for (size_t i = 0; i < sizeof used / sizeof used[0]; i++)
        free(used[i].bytes);
    return 0;
}
