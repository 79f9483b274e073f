/** Where a bench stands on the page of today, for what comes after the # of an address. */
export const benchAnchor = (id: string): string => `bench-${encodeURIComponent(id)}`;
