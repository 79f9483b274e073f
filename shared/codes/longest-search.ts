/** As much as anybody types to find something; a scanned code may be longer than a word. */
export const LONGEST_SEARCH = 300;
