/**
 * What the page may do, in one place: the build writes it into the page, a server sends it with every answer.
 * `lit-html`, `sw`, `search` and `photo` are the only Trusted Types policies there are (templates, service worker, the
 * threads of the search and of the photo).
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
  'trusted-types lit-html sw search photo',
];

/** For the page's own `<meta>`. */
export const pagePolicy = rules.join('; ');

/**
 * The headers that any server of the built folder should send. Browsers heed `frame-ancestors` only there. What the app
 * uses is allowed to it and to no frame in it; `web-share` is so by default, and not named: browsers that cannot share
 * complain about the word.
 */
export const safetyHeaders = {
  'Content-Security-Policy': [...rules, "frame-ancestors 'none'"].join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy':
    'screen-wake-lock=(self), clipboard-write=(self), camera=(), geolocation=(), microphone=()',
};
