/*
 * Which days and instants are taken in. The one place that says so: far enough from both ends of the calendar that every
 * interval before and after them can be worked out. Calculations themselves reach from 1970 to 9999.
 */

export const FIRST_YEAR = 1971;
export const LAST_YEAR = 2999;

/** Whether a year is one in which something of a shop may be. */
export const isAcceptedYear = (year: number): boolean => year >= FIRST_YEAR && year <= LAST_YEAR;

/** What to write instead of a day or an instant that is too far away. */
export const GIVE_A_YEAR = `Give a year from ${FIRST_YEAR} to ${LAST_YEAR}.`;
