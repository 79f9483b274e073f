/*
 * How far each step of the search goes, and how its time is shared. They were found by trying; none changes what an
 * answer means, only how soon it is good.
 */

/** At first only so many nodes of each part are looked at, so that a good plan is there soon. */
export const FEW_NODES = 400;

/** A margin above this part of what a product costs on the average leaves next to nothing out. */
export const MOST_MARGIN = 0.3;

/** The part of the time that is kept for choosing whole columns, and for counting them. */
export const FOR_CHOOSING = 0.5;

/** How long a step is, as a part of what the gap allows: at first, and where a climb ends. */
export const FIRST_REACH = 0.2;
export const COARSE_REACH = 0.05;
export const FINE_REACH = 0.005;
/** After so many steps without a better bound they become shorter. */
export const MOST_IDLE = 8;
/** How much the newest choice counts among the last ones. */
export const NEW_WEIGHT = 0.35;
/** A plan is made of every so many choices. */
export const PLAN_EVERY = 6;

/** The part of the time that is kept for what follows the climb. */
export const FOR_THE_REST = 0.4;

/** The part of the time that is kept for proving anything, when a first look has led to good prices. */
export const FOR_PROVING = 0.65;

/** How much of what a better plan could still cost is counted, one after another. */
export const COUNTED = [0.1, 0.25, 0.5, 1];
