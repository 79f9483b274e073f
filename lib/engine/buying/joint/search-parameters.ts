/*
 * How far each step of the search goes, and how its time is shared. They were found by trying; none changes what an
 * answer means, only how soon it is good.
 */

/** Nodes of each pricing graph at first, for a good plan soon. */
export const FEW_NODES = 400;

/** Above this share of a product's average cost, reduced-cost fixing removes next to nothing. */
export const MOST_MARGIN = 0.3;

/** The share of the time for the integer program and the enumeration. */
export const FOR_CHOOSING = 0.5;

/** The step length as a share of what the gap allows: at first, and where an ascent ends. */
export const FIRST_REACH = 0.2;
export const COARSE_REACH = 0.05;
export const FINE_REACH = 0.005;
/** Steps without a better bound before the step length is halved. */
export const MOST_IDLE = 8;
/** The weight of the newest pricing solution in the average. */
export const NEW_WEIGHT = 0.35;
/** A plan is built from every sixth pricing solution. */
export const PLAN_EVERY = 6;

/** The share of the time for what follows the ascent. */
export const FOR_THE_REST = 0.4;

/** The share of the time for the proof, once first dual prices are good. */
export const FOR_PROVING = 0.65;

/** The shares of the gap within which columns are enumerated, one after another. */
export const COUNTED = [0.1, 0.25, 0.5, 1];
