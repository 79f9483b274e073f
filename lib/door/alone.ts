/** The request header in which the proxy says that a page stands by itself. Never taken from outside. */
export const ALONE_HEADER = 'x-bench-alone';
