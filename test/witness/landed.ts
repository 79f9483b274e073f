/*
 * Parts of the definitions that the witness follows already and the program does not yet. Each is switched on with the
 * change that brings it.
 */
export const LANDED = {
  /** `need` is null where a part of it is unknown; `unknownSince` and `unknown-need`. */
  unknownNeed: true,
  /** A price counts from its `since` on. */
  futurePrices: true,
  /** `closedOn` of suppliers, and special days without hours. */
  holidays: true,
  /** An offer without a lead time has no day to order by. */
  unknownLead: true,
  /** A product with a pH range is flagged where no pH of the spray is known. */
  unknownPh: true,
};
