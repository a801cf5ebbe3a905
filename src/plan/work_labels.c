#include "plan/work_labels.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"

enum { FIRST_ROOM = 1024 };

#define NONE UINT32_MAX

void recede_labels_start(recede_labels *labels, size_t most, const recede_allocator *allocator)
{
    memset(labels, 0, sizeof *labels);
    labels->allocator = allocator;
    labels->most = most;
    labels->ceiling = INFINITY;
}

void recede_labels_end(recede_labels *labels)
{
    recede_release(labels->allocator, labels->items);
    recede_release(labels->allocator, labels->slots);
    memset(labels, 0, sizeof *labels);
}

static void empty_slots(recede_labels *labels)
{
    for (size_t i = 0; i < labels->slot_count; i++)
        labels->slots[i] = NONE;
}

void recede_labels_clear(recede_labels *labels)
{
    labels->count = 0;
    labels->ceiling = INFINITY;
    labels->dropped = 0;
    empty_slots(labels);
}

/* ------------------------------------------------------------------ keys -- */

static int same_key(const recede_label *one, const recede_label *other)
{
    for (int i = 0; i < RECEDE_MOST_WELLS; i++)
        if (one->well[i] != other->well[i])
            return 0;
    return one->under == other->under && one->chosen == other->chosen;
}

static size_t slot_of(const recede_labels *labels, const recede_label *label)
{
    uint64_t key = label->under * 256u + label->chosen;
    for (int i = 0; i < RECEDE_MOST_WELLS; i++)
        key = (key << 16 ^ key >> 48) ^ label->well[i];
    key *= 0x9e3779b97f4a7c15u;
    return (size_t)(key >> 32) & (labels->slot_count - 1);
}

/* The slot whose list has the label's key, or the empty one for it. */
static uint32_t *head_of(recede_labels *labels, const recede_label *label)
{
    size_t slot = slot_of(labels, label);
    while (labels->slots[slot] != NONE &&
           !same_key(&labels->items[labels->slots[slot]], label))
        slot = (slot + 1) & (labels->slot_count - 1);
    return &labels->slots[slot];
}

static void link_all(recede_labels *labels)
{
    empty_slots(labels);
    for (size_t i = 0; i < labels->count; i++) {
        uint32_t *head = head_of(labels, &labels->items[i]);
        labels->items[i].next = *head;
        *head = (uint32_t)i;
    }
}

static recede_code grow(recede_labels *labels)
{
    size_t room = labels->room ? 2 * labels->room : FIRST_ROOM;
    recede_label *items = recede_allocate_array(labels->allocator, room, sizeof *items);
    uint32_t *slots = recede_allocate_array(labels->allocator, 2 * room, sizeof *slots);
    if (!items || !slots) {
        recede_release(labels->allocator, items);
        recede_release(labels->allocator, slots);
        return RECEDE_NO_MEMORY;
    }
    if (labels->count)
        memcpy(items, labels->items, labels->count * sizeof *items);
    recede_release(labels->allocator, labels->items);
    recede_release(labels->allocator, labels->slots);
    labels->items = items;
    labels->slots = slots;
    labels->room = room;
    labels->slot_count = 2 * room;
    link_all(labels);
    return RECEDE_OK;
}

/* --------------------------------------------------------------- cutting -- */

static void swap(double *one, double *other)
{
    double kept = *one;
    *one = *other;
    *other = kept;
}

/* The value at a place, counted from 0, in ascending order: Hoare's partition. */
static double nth_least(double *values, size_t count, size_t nth)
{
    size_t low = 0, high = count - 1;
    while (low < high) {
        double pivot = values[low + (high - low) / 2];
        size_t left = low, right = high;
        for (;; left++, right--) {
            while (values[left] < pivot)
                left++;
            while (values[right] > pivot)
                right--;
            if (left >= right)
                break;
            swap(&values[left], &values[right]);
        }
        if (nth <= right)
            high = right;
        else
            low = right + 1;
    }
    return values[nth];
}

void recede_labels_settle(recede_labels *labels)
{
    size_t kept = 0;
    for (size_t i = 0; i < labels->count; i++)
        if (!isinf(labels->items[i].cost))
            labels->items[kept++] = labels->items[i];
    labels->count = kept;
}

recede_code recede_labels_cut(recede_labels *labels, size_t keep)
{
    if (labels->count <= keep)
        return RECEDE_OK;
    double *costs = recede_allocate_array(labels->allocator, labels->count, sizeof *costs);
    if (!costs)
        return RECEDE_NO_MEMORY;
    for (size_t i = 0; i < labels->count; i++)
        costs[i] = labels->items[i].cost;
    double dearest = nth_least(costs, labels->count, keep - 1);
    recede_release(labels->allocator, costs);
    size_t below = 0, kept = 0;
    for (size_t i = 0; i < labels->count; i++)
        below += labels->items[i].cost < dearest;
    size_t equals = keep - below;
    for (size_t i = 0; i < labels->count; i++) {
        double cost = labels->items[i].cost;
        if (cost < dearest || (cost == dearest && equals && equals--))
            labels->items[kept++] = labels->items[i];
    }
    labels->count = kept;
    labels->ceiling = fmin(labels->ceiling, dearest);
    labels->dropped = 1;
    return RECEDE_OK;
}

static recede_code make_room(recede_labels *labels)
{
    recede_code code = RECEDE_OK;
    if (labels->count < labels->most)
        return grow(labels);
    recede_labels_settle(labels);
    code = recede_labels_cut(labels, labels->most / 2);
    link_all(labels);
    return code;
}

/* -------------------------------------------------------------- offering -- */

/* one is never worse than other, of the same key. */
static int outdoes(const recede_label *one, const recede_label *other)
{
    for (int i = 0; i < RECEDE_MOST_WELLS; i++)
        if (one->left_ml[i] > other->left_ml[i])
            return 0;
    return one->cost <= other->cost;
}

recede_code recede_labels_offer(recede_labels *labels, const recede_label *label)
{
    if (label->cost >= labels->ceiling)
        return RECEDE_OK;
    if (labels->count == labels->room || labels->count >= labels->most) {
        recede_code code = make_room(labels);
        if (code)
            return code;
    }
    uint32_t *head = head_of(labels, label);
    for (uint32_t i = *head; i != NONE; i = labels->items[i].next)
        if (outdoes(&labels->items[i], label))
            return RECEDE_OK;
    for (uint32_t i = *head; i != NONE; i = labels->items[i].next)
        if (outdoes(label, &labels->items[i]))
            labels->items[i].cost = INFINITY;
    recede_label *own = &labels->items[labels->count];
    *own = *label;
    own->next = *head;
    *head = (uint32_t)labels->count++;
    return RECEDE_OK;
}
