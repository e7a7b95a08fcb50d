const directives = [
  "default-src 'none'",
  "script-src 'self'",
  // React Flow places nodes and edges through style attributes.
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-src 'none'",
  "frame-ancestors 'none'",
];

/** The page's content policy: nothing but what the program itself brings, no inline script, no code from text. */
export const contentPolicy = directives.join('; ');

/** The headers of every answer to the page, in the desktop program and on loopback alike. */
export const protectiveHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=(), midi=(), payment=()',
  // The next start may serve a newer build under the same address.
  'cache-control': 'no-cache',
};
