/** The set-up page's test: says which step is missing. It asks the shop's server, and reads no answer. */

const PATIENCE = 8000; // milliseconds; a refused certificate is quicker, a closed door slower

/** @typedef {"there" | "refused" | "silent"} Reply */

const found = document.body.dataset;
const button = /** @type {HTMLButtonElement} */ (document.getElementById("try"));
const outcome = /** @type {HTMLElement} */ (document.getElementById("outcome"));

/** Ask an address: only a certificate that is trusted gets as far as an answer. @param {string} address @returns {Promise<Reply>} */
async function ask(address) {
  const signal = AbortSignal.timeout(PATIENCE);
  try {
    await fetch(address, { mode: "no-cors", cache: "no-store", credentials: "omit", signal });
    return "there";
  } catch {
    return signal.aborted ? "silent" : "refused";
  }
}

/** Which step is missing. @returns {Promise<[string, string]>} what to say, and its kind */
async function missing() {
  const reached = found.reached ?? "";
  const [here, byOrigin, byNumber] = await Promise.all([
    ask(found.here ?? ""),
    ask(`${found.origin}${reached}`),
    found.byNumber ? ask(`${found.byNumber}${reached}`) : /** @type {Reply} */ ("silent"),
  ]);
  if (byOrigin === "there") return ["Passed. This phone trusts the shop’s computer. Go on below.", "passed"];
  if (here !== "there") return ["The computer does not answer. Is this phone on the shop’s network, and is Shoulderline running?", "away"];
  if (byNumber === "there") return [nameless(), "name"];
  if (byNumber === "silent" && (found.byNumber || byOrigin === "silent")) return [shutDoor(), "closed"];
  return [
    "This phone does not trust the certificate yet. iPhone: do steps 2 and 3; step 3, the switch, is the one most often missed. Android: do step 2.",
    "certificate",
  ];
}

/** @returns {string} */
function nameless() {
  return (
    "The certificate is fine, but this phone cannot find the shop’s computer by its name. Before any phone is paired: stop " +
    `Shoulderline on the computer, start it with: shoulderline serve --shop --by-number ${found.number} and have the ` +
    "router always give the computer that number (a DHCP reservation). Then open this page again."
  );
}

/** @returns {string} */
function shutDoor() {
  return `The computer answers here, but not at ${found.origin}. Its firewall has to let that port in.`;
}

async function test() {
  button.disabled = true;
  outcome.textContent = "Testing…";
  const [text, kind] = await missing();
  outcome.textContent = text;
  outcome.dataset.kind = kind;
  button.disabled = false;
}

button.hidden = false;
button.addEventListener("click", () => void test());

export {}; // a module: its names are its own
