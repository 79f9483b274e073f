/** The request header in which the proxy says which page is asked for, with its query. Never taken from outside. */
export const PATH_HEADER = 'x-bench-path';
