/**
 * The headers every answer carries. No HSTS: it would outlast a certificate of the shop's own making, and lock people out.
 * Referrer-Policy is `same-origin`, since `no-referrer` makes browsers send `Origin: null` with our own forms.
 * The camera is left to our own pages, which read the labels of bottles with it; a browser still asks the person first.
 */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=()',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** For answers that are data: nothing in them may run, load or be framed. */
export const DATA_POLICY = "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

/** For a file that a browser shows with a viewer of its own, which brings its styles; nothing in the file may run or load. */
export const FILE_POLICY = `${DATA_POLICY}; style-src 'unsafe-inline'; object-src 'self'`;

/**
 * The content policy of a page: only scripts that carry this answer's nonce run.
 * Style attributes are allowed, because charts and bars set widths with them; style elements need the nonce.
 *
 * Takes    a fresh nonce, and whether a developer's server is answering (React's error overlay needs eval and styles)
 */
export function pagePolicy(nonce: string, developing: boolean): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${developing ? " 'unsafe-eval'" : ''}`,
    developing ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${developing ? ' ws:' : ''}`,
    "object-src 'none'",
    "frame-src 'none'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}
