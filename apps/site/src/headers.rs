//! What may a browser do with our page? Headers that go with every answer, whatever its status.
//!
//! Quality target S2. HSTS belongs to whoever ends TLS in front of this program, which itself speaks plain HTTP.

/// The page may run its own scripts and its own wasm, and talk to where it came from; nothing else.
///
/// `'wasm-unsafe-eval'` is needed: without it no wasm is compiled. Inline scripts, inline styles and `style` attributes are
/// refused, so the page styles with classes and with properties set from script.
pub const CONTENT_SECURITY_POLICY: &str = "default-src 'none'; \
    script-src 'self' 'wasm-unsafe-eval'; \
    style-src 'self'; \
    img-src 'self' blob: data:; \
    connect-src 'self'; \
    manifest-src 'self'; \
    worker-src 'self'; \
    form-action 'self'; \
    base-uri 'none'; \
    object-src 'none'; \
    frame-ancestors 'none'";

/// Every device and power that a page can ask for, closed. Only names that browsers know: others fill the console.
pub const PERMISSIONS_POLICY: &str = "accelerometer=(), autoplay=(), browsing-topics=(), camera=(), \
    clipboard-read=(), display-capture=(), encrypted-media=(), fullscreen=(), gamepad=(), geolocation=(), \
    gyroscope=(), hid=(), identity-credentials-get=(), idle-detection=(), keyboard-map=(), local-fonts=(), \
    magnetometer=(), microphone=(), midi=(), payment=(), picture-in-picture=(), publickey-credentials-create=(), \
    publickey-credentials-get=(), screen-wake-lock=(), serial=(), storage-access=(), sync-xhr=(), usb=(), \
    window-management=(), xr-spatial-tracking=()";

/// Name and value of each header that every answer carries.
pub const ON_EVERY_ANSWER: [(&str, &str); 6] = [
    ("content-security-policy", CONTENT_SECURITY_POLICY),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "same-origin"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", PERMISSIONS_POLICY),
];
