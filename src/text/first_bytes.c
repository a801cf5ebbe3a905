#include "text/first_bytes.h"

#include <string.h>

typedef struct {
    const char *first;
    size_t size;
    const char *says;
} kind;

/* Byte order marks: the Unicode Standard, 23.8; PNG: ISO/IEC 15948, 5.2; JPEG: ITU-T
 * T.81, B.1.1.3; PDF: ISO 32000-1, 7.5.2; gzip: RFC 1952, 2.3.1; ZIP: ISO/IEC 21320-1,
 * which takes over the signature of a local file. */
static const kind kinds[] = {
    {"\xFF\xFE", 2, "the file is saved as UTF-16; save it as UTF-8"},
    {"\xFE\xFF", 2, "the file is saved as UTF-16; save it as UTF-8"},
    {"\x89PNG", 4, "this is a PNG picture, not a text; is it meant for --photo of recede swatch?"},
    {"\xFF\xD8\xFF", 3, "this is a JPEG picture, not a text; a photograph goes, saved as PNG, to "
                        "--photo of recede swatch"},
    {"%PDF-", 5, "this is a PDF document, not a text; name the text that it was made from, or "
                 "export one"},
    {"\x1F\x8B", 2, "the file is packed with gzip; unpack it first"},
    {"PK\x03\x04", 4, "this is a ZIP archive or a spreadsheet, not a text; unpack it, or export "
                      "it as a text"},
};

size_t recede_byte_order_mark(const char *bytes, size_t size)
{
    return size >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}

recede_text_status recede_first_bytes_check(const char *bytes, size_t size, size_t *skip,
                                            recede_text_error *error)
{
    *skip = recede_byte_order_mark(bytes, size);
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
        if (size >= kinds[i].size && memcmp(bytes, kinds[i].first, kinds[i].size) == 0)
            return recede_text_refuse(error, 1, 1, "%s", kinds[i].says);
    return RECEDE_TEXT_OK;
}
