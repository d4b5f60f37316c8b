// First in every page: what the page's policy forbids, and what goes wrong.
const violations = [];
document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sourceFile }) => {
  violations.push(`${effectiveDirective} forbids ${blockedURI} in ${sourceFile}`);
});

/** Sends the answer home, once all violations have been told of: their events come in tasks of their own. */
function finish(answer) {
  setTimeout(() => {
    fetch(`/answer${location.pathname}`, { method: 'POST', body: JSON.stringify({ ...answer, violations }) });
  }, 300);
}

function failed(error) {
  finish({ error: String(error?.stack ?? error) });
}
addEventListener('error', ({ error, message }) => failed(error ?? message));
addEventListener('unhandledrejection', ({ reason }) => failed(reason));
