// Keeps what a reader foretold, opens what waits for it, and draws it into the picture of what comes out.
const reading = (form) => JSON.parse(form.querySelector("[data-reading]").textContent);
const SHELF = "woodlib predictions: " + document.title; // where a browser keeps what was said on this page
const askedBy = (form) => form.dataset.question + "\n" + form.querySelector("legend").textContent;
let foretold = {}; // {key and question: what was said}
function showPrediction(form) { // a prediction stands: it is shown, and not asked again
  const said = foretold[askedBy(form)], fields = form.querySelectorAll("input, button");
  if (!said) return;
  fields.forEach((field) => { field.disabled = true; field.checked = field.value === said; });
  form.querySelectorAll("input[type=text]").forEach((field) => (field.value = said));
  form.querySelector("[role=status]").textContent = `You said: ${said}`;
  each(`[data-said="${CSS.escape(form.dataset.question)}"]`, (place) => (place.textContent = `You said: ${said}`));
}
function keepPrediction(form) {
  const field = form.querySelector("input:checked") || form.querySelector("input[type=text]"), said = field && field.value.trim().replace(/\s+/g, " ");
  const unread = said && form.querySelector("[data-reading]") && judge(said, reading(form)).sentence;
  if (!said || unread) { form.querySelector("[role=status]").textContent = unread || "There is no answer yet."; return; }
  foretold[askedBy(form)] = said;
  try { localStorage.setItem(SHELF, JSON.stringify(foretold)); } catch { /* kept as long as the page is open */ }
  showPrediction(form), openCurtains();
}
function openCurtains() {
  each("[data-after]", (curtain) => {
    const forms = JSON.parse(curtain.dataset.after).map((key) => document.querySelector(`[data-question="${CSS.escape(key)}"]`));
    if (forms.every((form) => foretold[askedBy(form)])) curtain.dataset.open = "yes";
    drawForetold(curtain, forms.filter((form) => foretold[askedBy(form)]));
  });
}
function drawForetold(curtain, forms) { // a line on the gauge for each quantity of its kind, and a line of words for each
  const svg = curtain.querySelector("svg"), gauge = (curtain.querySelector("[data-gauge]") || svg).dataset.gauge, path = svg.querySelector("path.l-said");
  const overlay = svg.querySelector("[data-foretold]") || svg.appendChild(document.createElementNS(svg.namespaceURI, "g"));
  overlay.dataset.foretold = "", overlay.replaceChildren();
  const box = (svg.dataset.box = svg.dataset.box || svg.getAttribute("viewBox")).split(" ").map(Number), high = box[3];
  const put = (name, kept) => { const mark = overlay.appendChild(document.createElementNS(svg.namespaceURI, name)); Object.entries(kept).forEach(([key, value]) => mark.setAttribute(key, value)); return mark; };
  put("rect", { class: "a-paper", y: high, width: box[2], height: 24 * forms.length });
  forms.forEach((form, k) => {
    const said = foretold[askedBy(form)], down = high + 24 * (k + 0.65), [kind, low, top] = (gauge || "").split(" ");
    const share = path && kind === form.dataset.kind && form.querySelector("[data-reading]") ? (readTyped(said, reading(form)) - low) / (top - low) : NaN;
    const line = { class: "l l-said", "stroke-width": 2.4, "stroke-dasharray": "6 4" };
    if (share >= 0 && share <= 1) {
      const [x0, y0, x1, y1, x2, y2] = path.getAttribute("d").match(/-?[\d.]+/g).map(Number), x = x0 + share * (x1 - x0), y = y0 + share * (y1 - y0);
      put("path", { ...line, d: `M${x},${y} ${x + x2 - x1},${y + y2 - y1}` }), put("path", { ...line, d: `M12,${down - 5} 34,${down - 5}` });
    } else put("circle", { class: "a-said", cx: 23, cy: down - 5, r: 4 });
    put("text", { class: "w-said", x: 42, y: down, style: "--f:15px" }).textContent = `You said: ${said}`;
  });
  svg.setAttribute("viewBox", [...box.slice(0, 3), high + 24 * forms.length].join(" "));
}
if (document.documentElement.dataset.live) {
  try { foretold = JSON.parse(localStorage.getItem(SHELF)) || {}; } catch { /* a browser that keeps nothing */ }
  each("[data-question]", (form) => {
    form.querySelector("button").addEventListener("click", () => keepPrediction(form));
    form.addEventListener("keydown", (event) => { if (event.key === "Enter" && event.target.type === "text") keepPrediction(form); });
    showPrediction(form);
  });
  each("[data-after]", (curtain) => {
    curtain.querySelector("button").addEventListener("click", () => { curtain.dataset.open = "yes"; });
    curtain.addEventListener("input", openCurtains); // what a slider moves may move the gauge
  });
  openCurtains();
}
