// Answers for the pages on site of jobs that were taken along, where there is no network: what was last seen of them.
const SEEN = "site ";
const WAIT_MS = 5000;
const OF_JOB = /^\/jobs\/([0-9a-z]{20})\/(?:site(?:$|\/drawing$)|drawing$)/;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event, url = new URL(request.url);
  if (url.origin !== location.origin) return;
  if (request.method === "POST" && url.pathname === "/leave") {
    // Who leaves takes the pages along no more; what waits to be sent stays.
    event.waitUntil(forget());
    return;
  }
  if (request.method === "GET" && (OF_JOB.test(url.pathname) || url.pathname.startsWith("/static/")))
    event.respondWith(answered(request, url));
});

async function forget() {
  for (const name of await caches.keys()) if (name.startsWith(SEEN)) await caches.delete(name);
}

/** The cache that a page belongs to; none where its job was not taken along. */
async function shelf(url) {
  const job = OF_JOB.exec(url.pathname)?.[1];
  const names = (await caches.keys()).filter((name) => (job ? name === SEEN + job : name.startsWith(SEEN)));
  return names.length ? caches.open(names[0]) : null;
}

async function answered(request, url) {
  const seen = await shelf(url);
  if (!seen) return fetch(request);
  const kept = await seen.match(url.href, { ignoreVary: true });
  try {
    const answer = await (kept ? soon(request) : fetch(request));
    if (answer.ok && !answer.redirected && kept) await seen.put(url.href, answer.clone());
    return answer;
  } catch (error) {
    if (kept) return kept;
    throw error;
  }
}

/** A network that is there and answers nothing is as good as none. */
function soon(request) {
  return new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error("no answer")), WAIT_MS);
    fetch(request).then(resolve, reject);
  });
}
