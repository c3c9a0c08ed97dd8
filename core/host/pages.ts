/**
 * The few pages that the host writes itself, without script: the way in. All text is fixed; nothing that comes from
 * a request is ever put into a page.
 */

/** The screens' paper, ink and accent, in figures: these pages stand alone. Contrast is at least 4.5 throughout. */
const STYLE = `
  :root { color-scheme: light dark; --paper: #eceeea; --sheet: #f9faf7; --ink: #14171a; --edge: #7b8285;
    --accent: #b3300a; --on-accent: #ffffff; font: 1.25rem/1.4 system-ui, sans-serif; }
  @media (prefers-color-scheme: dark) { :root { --paper: #121416; --sheet: #1c2023; --ink: #eef1ec;
    --edge: #727b7f; --accent: #ff8f60; --on-accent: #1c0d04; } }
  body { margin: 0; background: var(--paper); color: var(--ink); }
  main { max-width: 34rem; margin: 0 auto; padding: 12vh 1.5rem 3rem; }
  h1 { font-size: 2.25rem; line-height: 1; margin: 0 0 1.5rem; }
  a { color: var(--accent); }
  input { margin-top: .5rem; font: inherit; font-size: 2.25rem; letter-spacing: .1em; width: 10ch; min-height: 56px; padding: 0 .25em;
    font-variant-numeric: tabular-nums; background: var(--sheet); color: inherit; border: 2px solid var(--edge); border-radius: 2px; }
  button { font: inherit; font-weight: 600; min-height: 56px; padding: 0 1.5em; margin-top: 1rem; display: block;
    background: var(--accent); color: var(--on-accent); border: 0; border-radius: 2px; }
  :focus-visible { outline: 3px solid var(--accent); outline-offset: 3px; }
  [role=alert] { font-weight: 700; }
`;

export type CodePageState = 'first' | 'wrong' | 'withdrawn';

const SAID: Record<CodePageState, string> = {
  first: '',
  wrong: '<p role="alert">That is not the code. Look at the terminal again.</p>',
  withdrawn:
    '<p role="alert">There is no code to be used now. Press Enter in the terminal: it says a new one, good for ten minutes.</p>',
};

/** Asks for the code that stands in the terminal. */
export function codePage(state: CodePageState, nonce: string): string {
  return page(
    nonce,
    'Everybolt',
    `<h1>Everybolt</h1>
    <p>This window is not connected yet. Type the code that stands in the terminal where Everybolt was started.
    Without a code there: press Enter in that terminal.</p>
    ${SAID[state]}
    <form method="post" action="/session/code">
      <label>Code, 8 digits<br><input name="code" inputmode="numeric" autocomplete="one-time-code" maxlength="16" required autofocus></label>
      <button>Open the workshop</button>
    </form>`,
  );
}

/**
 * Goes on to the program after the session cookie was set. A page, not a redirect: after a post from a file the
 * browser counts a redirect as coming from elsewhere and holds the cookie back; a page that goes on by itself is ours.
 */
export function enterPage(nonce: string): string {
  return page(
    nonce,
    'Everybolt',
    '<p><a href="/">Go on to the workshop</a></p>',
    '<meta http-equiv="refresh" content="0;url=/">',
  );
}

/** Said when a ticket is used a second time, or too late. */
export function spentPage(nonce: string): string {
  return page(
    nonce,
    'Everybolt',
    `<h1>This way in has been used, or is older than 30 seconds.</h1>
    <p>Press Enter in the terminal where Everybolt was started, <a href="/">go on</a>, and type the code it says.</p>`,
  );
}

/** Said when the renderer has not been built. */
export function unbuiltPage(nonce: string): string {
  return page(
    nonce,
    'Everybolt',
    '<h1>The screens are not built yet.</h1><p>Start Everybolt with <code>npm start</code>, which builds them.</p>',
  );
}

/**
 * The file that carries a ticket into the browser: it posts it by itself, so that the ticket never stands in an
 * address or an argument, where other users of the computer could read it.
 */
export function ticketFile(address: string, ticket: string): string {
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Everybolt</title>
<meta name="viewport" content="width=device-width, initial-scale=1"></head>
<body><form id="way-in" method="post" action="${attribute(address)}/session/ticket">
<input type="hidden" name="ticket" value="${attribute(ticket)}">
<p>Opening the workshop. If nothing happens within a few seconds, use this button; if the browser then cannot find the
page, use a current Chrome, Edge or Firefox.</p><button>Open the workshop</button></form>
<script>document.getElementById('way-in').submit();</script></body></html>
`;
}

function attribute(text: string): string {
  return text.replace(/[&"<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

function page(nonce: string, title: string, body: string, head = ''): string {
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${title}</title>
<meta name="viewport" content="width=device-width, initial-scale=1"><link rel="icon" href="data:,">${head}
<style nonce="${nonce}">${STYLE}</style></head>
<body><main>${body}</main></body></html>
`;
}
