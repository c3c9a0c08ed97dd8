/** Headers of every reply. From nothing allowed, to what the screens need. */

export interface HeaderChoice {
  /** Made anew for each page; also given to the few styles that the screen library puts in by itself. */
  readonly nonce: string;
  /** The page with a form says where it comes from, or browsers would send it without an origin. */
  readonly ownReferrer?: boolean;
}

/** What a page of this program may load: only this host. Pictures may also come from memory (previews). */
export function contentPolicy(nonce: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "media-src 'self' blob:",
    "worker-src 'self'",
    "manifest-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

const UNUSED = [
  'accelerometer',
  'camera',
  'display-capture',
  'geolocation',
  'gyroscope',
  'hid',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'serial',
  'usb',
];

export function securityHeaders({ nonce, ownReferrer }: HeaderChoice): Record<string, string> {
  return {
    'Content-Security-Policy': contentPolicy(nonce),
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': ownReferrer ? 'same-origin' : 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Permissions-Policy': UNUSED.map((feature) => `${feature}=()`).join(', '),
    'Cache-Control': 'no-store',
  };
}
