/** How many weeks every page and every alert looks ahead, so that they and `shop plan --weeks 26` say the same. */
export const WEEKS_AHEAD = 26;
