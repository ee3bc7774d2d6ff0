/**
 * The content policy, in one place: the build writes it into the page, the server sends it as a header.
 * `lit-html`, `sw` and `search` are the only Trusted Types policies there are (templates, service worker, the search's
 * thread).
 */

const rules = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html sw search',
];

/** For the page's own `<meta>`. */
export const pagePolicy = rules.join('; ');

/** For the header: browsers heed `frame-ancestors` only there. */
export const headerPolicy = [...rules, "frame-ancestors 'none'"].join('; ');
