/** Where everything lies in the one memory that the inner loop of a search works in: addresses in bytes. */

/** Numbers of the whole search, at the beginning of the memory; first where the tables are and how long they are. */
export const ITEMS = 0;
export const ITEM_COUNT = 4;
export const STANCES = 8;
export const STANCE_COUNT = 12;
export const PAIRS = 16;
export const CLOTHS = 20;
export const CLOTH_COUNT = 24;
/** Weight and loss of each pair of items, both ways round. */
export const WEIGHTS = 28;
export const LOSSES = 32;
/** How many others each item overlaps. */
export const CLASHES = 36;
/** Addresses of the items that a judged place is compared with. */
export const SEEN = 40;
export const SEEN_COUNT = 44;
export const RANDOM_STATE = 48;
/** How many places of a move are kept. */
export const KEPT = 52;
export const GAP = 64;
/** Overlaps no deeper than this count as touching. */
export const TOLERANCE = 72;
/** The width of the widest cloth. */
export const UNIT = 80;
export const REPEAT = 88;
/** Where on the repeat the match points fall. */
export const PHASE = 96;
/** Places no further than `REACH` from (`ABOUT_X`, `ABOUT_Y`) are compared rightly with the items in `SEEN`. */
export const REACH = 104;
export const ABOUT_X = 112;
export const ABOUT_Y = 120;
/** The judged place: its box, then the place itself, as in an item. */
export const PROBE = 128;
/** Bounds of the last place asked for with `range`, as a box. */
export const RANGE = 192;
/** After `depth` was above 0: the direction of the shortest way out. */
export const WAY_X = 224;
export const WAY_Y = 232;
/** The best places of a move, best first: loss, place, stance and cloth. */
export const BEST = 256;
export const PLACE_X = 8;
export const PLACE_Y = 16;
export const PLACE_STANCE = 24;
export const PLACE_CLOTH = 28;
export const PLACE = 32;
/** After `contacts`: direction and length of each shortest way out. */
export const PUSH = 384;
export const PUSH_Y = 8;
export const PUSH_BY = 16;
export const PUSH_SIZE = 24;
export const HEADER = 576;

/** A box: its four sides. An item and a stance begin with one. */
export const LEFT = 0;
export const LOW = 8;
export const RIGHT = 16;
export const HIGH = 24;

/** An item: its box grown by the gap, its place, stance and cloth (-1 when it lies on none), and its kind's stances. */
export const X = 32;
export const Y = 40;
export const STANCE = 48;
export const CLOTH = 52;
export const FIRST_STANCE = 56;
export const STANCES_OF_KIND = 60;
export const ITEM = 64;

/** A stance: the box of its simplified outline, that of its true outline, and its match point's x, or NaN. */
export const TRUE = 32;
export const MATCH = 64;
export const STANCE_SIZE = 80;

/** A cloth: its width and the length of it that may be used. */
export const WIDTH = 0;
export const LIMIT = 8;
export const CLOTH_SIZE = 16;

/** A pair of stances: how its field is asked, the sign of the offset in it; 0 for a field that is not made yet. */
export const COS = 0;
export const SIN = 8;
export const SIZE = 16;
export const FIELD = 24;
export const PAIR = 32;

/** A field begins with its box; then these, then for each cell where its list is. */
export const PER_X = 32;
export const PER_Y = 40;
export const FIELD_GAP = 48;
/** The last column and row. */
export const LAST = 56;
export const EDGES = 64;
export const EDGE_COUNT = 68;
export const CELLS = 72;
/** What a cell has in place of a list. */
export const UNKNOWN = -1;
export const OUTSIDE = -2;

/**
 * A list of edges begins with a point near all of its cells, how many blocks there are and how many edges. A block is
 * four edges in single precision, seen from that point, each figure of all four beside one another: the point of the
 * edge nearest to the list's point, its direction, how far it goes on from there to either end, and the outward
 * directions at its ends; then the addresses of the four.
 */
export const BLOCK_COUNT = 16;
export const LIST_LENGTH = 20;
export const BLOCKS = 32;
export const FOOT_X = 0;
export const FOOT_Y = 16;
export const ALONG_X = 32;
export const ALONG_Y = 48;
export const BACK = 64;
export const AHEAD = 80;
export const FIRST_OUT_X = 96;
export const FIRST_OUT_Y = 112;
export const LAST_OUT_X = 128;
export const LAST_OUT_Y = 144;
export const ADDRESSES = 160;
export const BLOCK = 176;

/** An edge: start, direction, length, and the outward direction at both its ends. */
export const UX = 16;
export const UY = 24;
export const LONG = 32;
export const OUT_X = 40;
export const OUT_Y = 48;
export const NEXT_OUT_X = 56;
export const NEXT_OUT_Y = 64;
export const EDGE = 72;
