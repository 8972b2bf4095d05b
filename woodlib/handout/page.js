// Draws frozen studies again when a control moves. It knows tables, interpolation, choices, thresholds and how
// numbers are written; what the numbers mean it does not know.
const OPERATIONS = {
  "+": (a, b) => a + b, "-": (a, b) => a - b, "*": (a, b) => a * b, "/": (a, b) => a / b, larger: Math.max, smaller: Math.min,
  reached: (a, b) => (a >= b - 1e-7 * Math.max(Math.abs(a), Math.abs(b)) ? 1 : 0),
};
const SLACK = 1e-6; // of one step: a number this close to a tick counts as that tick
const HOLDS = { checkbox: "checked", range: "value", "select-one": "selectedIndex" };
let studies = [], units = START_UNITS;
function wholeSteps(number, perUnit, rounding) {
  const x = number * perUnit;
  if (rounding !== "nearest") return rounding === "up" ? Math.ceil(x - SLACK) : Math.floor(x + SLACK);
  return Math.sign(x) * Math.floor(Math.abs(x) + 0.5 + SLACK);
}
function fraction(count, denominator) {
  let top = count % denominator, bottom = denominator;
  const whole = (count - top) / denominator;
  for (; top && top % 2 === 0; top /= 2) bottom /= 2;
  return top ? (whole ? whole + "-" : "") + top + "/" + bottom : String(whole);
}
function writePart(part, number, rounding) {
  const count = wholeSteps(number * part.scale + part.offset, part.steps_per_unit, rounding), size = Math.abs(count);
  let digits = part.denominator ? fraction(size, part.denominator) : (size / part.steps_per_unit).toFixed(part.decimals);
  if (part.trim && digits.includes(".")) digits = digits.replace(/\.?0+$/, "");
  if (count < 0) digits = "-" + digits;
  return digits + (part.one && digits === "1" ? part.one : part.suffix);
}
function write(number, format, rounding) {
  const texts = format.parts.map((part) => writePart(part, number, rounding || format.rounding));
  if (units !== "both") return units === "inch" ? texts[0] : texts[texts.length - 1];
  return texts[0] + texts.slice(1).map((text) => ` (${text})`).join("");
}
// What has not changed is left alone: that is most of the page.
const change = (node, name, text) => node.getAttribute(name) === text || node.setAttribute(name, text);
const rewrite = (node, text) => { if (node.textContent !== text) node.textContent = text; };
class Study {
  constructor(section, data) {
    Object.assign(this, { section, data, id: section.id, shape: -1 });
    this.controls = data.inputs.map((input) => this.find(`[data-input="${input.key}"]`));
    this.values = data.inputs.map((input) => this.find(`[data-value="${input.key}"]`));
    this.places = data.inputs.map((input) => input.options ? [...input.options.keys()]
      : Array.from({ length: input.count }, (_, k) => input.low + k * input.step).concat(input.own).sort((a, b) => a - b));
    this.start = data.inputs.map((input) => input.start);
    this.controls.forEach((control) => control.addEventListener("input", () => this.moved()));
    this.find("[data-back]").addEventListener("click", () => { this.position = this.start; this.moved(); });
    section.querySelectorAll("[hidden]").forEach((element) => (element.hidden = false));
  }
  find(selector) { return this.section.querySelector(selector); }
  get position() { return this.controls.map((control) => Number(control[HOLDS[control.type]])); }
  set position(places) { this.controls.forEach((control, k) => { control[HOLDS[control.type]] = places[k]; }); }
  // The numbers of the answer at a position: table columns, common motions, then the decided steps.
  numbers(position) {
    const orders = []; // per span, the Chebyshev polynomials at its place
    let which = 0;
    this.data.inputs.forEach((input, k) => {
      if (input.options) return (which = which * input.options.length + position[k]);
      const [low, high, count] = this.data.spans[orders.length];
      const x = (2 * (this.places[k][position[k]] - low)) / (high - low) - 1, t = [1, x];
      while (t.length < count) t.push(2 * x * t[t.length - 1] - t[t.length - 2]);
      return orders.push(t);
    });
    const basis = this.data.products.map((product) => product.reduce((value, order, k) => value * orders[k][order], 1));
    const [number, place] = this.data.cases[which], shape = this.data.shapes[number];
    const sums = (table) => table.cases[place].map((sparse, k) => {
      let at = -1, sum = 0;
      for (let n = 0; n < sparse.length; n += 2) sum += basis[(at += sparse[n])] * sparse[n + 1];
      return sum * table.quantum[k];
    });
    const leaves = new Float64Array(shape.leaves), moved = Float64Array.from(shape.mean), made = [];
    sums(shape.common).forEach((amount, k) => shape.modes[k].forEach((share, j) => { moved[j] += amount * shape.units[k] * share; }));
    shape.still[0].forEach((slot, k) => { leaves[slot] = shape.still[1][k]; });
    sums(shape.exact).forEach((value, k) => { leaves[shape.columns[k]] = value; });
    for (const [slot, source, scale, shift] of shape.echoes) leaves[slot] = scale * leaves[source] + shift;
    shape.motions.forEach((slot, j) => { leaves[slot] = moved[j]; });
    const at = (slot) => (slot >= 0 ? leaves[slot] : made[-1 - slot]);
    for (const [name, a, b] of shape.steps) made.push(OPERATIONS[name](at(a), at(b)));
    return { number, at, words: shape.words[place] };
  }
  say(part, answer) {
    if (typeof part === "string") return part;
    if (part[0] === "w") return answer.words[part[1]];
    if (part[0] === "n") return write(answer.at(part[1]), this.data.formats[part[2]], part[3]);
    if (part[0] === "k") return this.say(part[2][Math.round(answer.at(part[1]))], answer);
    return part.slice(1).map((inner) => this.say(inner, answer)).join("");
  }
  draw() {
    const position = this.position, answer = this.numbers(position), shape = this.data.shapes[answer.number];
    if (this.shape !== answer.number) {
      this.find("[data-marks]").innerHTML = shape.svg.replaceAll("CLIP", this.id);
      this.find("[data-readings]").innerHTML = shape.readings;
      this.nodes = [...this.find("svg").querySelectorAll("path,circle,text"), ...this.section.querySelectorAll("[data-s]"), { textContent: "" }];
      this.terms = [...this.section.querySelectorAll("[data-readings] dt")];
      this.shape = answer.number;
    }
    for (const [kind, element, what, ...rest] of shape.updates) {
      const node = this.nodes[element];
      if (kind === 0) { // a path: slots of its coordinates, or an unbroken run of them
        const slots = rest[0].length === 2 ? Array.from({ length: -rest[0][1] }, (_, k) => rest[0][0] + k) : rest[0];
        change(node, "d", "M" + slots.map((slot) => answer.at(slot).toFixed(1)).join(" ") + (what ? "Z" : ""));
      } else if (kind === 1) change(node, what, answer.at(rest[0]).toFixed(1));
      else if (kind === 2) change(node, "class", what + this.say(rest[0], answer) + this.say(rest[1], answer));
      else rewrite(node, this.say(what, answer));
    }
    this.data.inputs.forEach((input, k) => {
      const text = input.options ? input.options[position[k]] : write(this.places[k][position[k]], this.data.formats[input.kind]);
      rewrite(this.values[k], text);
      if (!input.options) change(this.controls[k], "aria-valuetext", text);
    });
    const readings = this.terms.map((term) => `${term.textContent}: ${term.nextSibling.firstChild.textContent}.`);
    const told = [this.nodes[this.nodes.length - 1].textContent, this.find("[data-s]").textContent, ...readings];
    rewrite(this.find("desc"), told.filter(Boolean).join(" "));
  }
  moved() { this.draw(); clearTimeout(this.timer); this.timer = setTimeout(() => this.settled(), 500); }
  settled() { // told once the control rests: one polite sentence, and the address
    this.find("[role=status]").textContent = this.find("[data-s]").textContent;
    const kept = new URLSearchParams();
    for (const study of studies)
      study.position.forEach((place, k) => place !== study.start[k] && kept.set(`${study.id}.${study.data.inputs[k].key}`, place));
    history.replaceState(null, "", "#" + kept);
  }
}
function readAddress() { // controls that the address does not name stand at their start
  const kept = new URLSearchParams(location.hash.slice(1));
  for (const study of studies) {
    const named = study.data.inputs.map((input) => Number(kept.get(`${study.id}.${input.key}`) || NaN));
    study.position = named.map((place, k) => (place in study.places[k] ? place : study.start[k]));
    study.draw();
  }
}
function keepPrediction(form) {
  const field = form.querySelector("input:checked") || form.querySelector("input[type=text]"), said = field && field.value.trim();
  form.querySelector("[role=status]").textContent = said ? `You said: ${said}` : "There is no answer yet.";
  if (said) for (const place of document.querySelectorAll(`[data-said="${CSS.escape(form.dataset.question)}"]`)) place.textContent = `You said: ${said}`;
}
async function begin() {
  for (const section of document.querySelectorAll("[data-study]")) {
    const packed = Uint8Array.from(atob(section.querySelector("[data-table]").textContent), (c) => c.charCodeAt(0));
    const text = await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
    studies.push(new Study(section, JSON.parse(text)));
  }
  document.querySelectorAll("body [hidden]").forEach((element) => (element.hidden = false));
  for (const choice of document.querySelectorAll("[name=units]"))
    choice.addEventListener("change", () => { units = choice.value; studies.forEach((study) => study.draw()); });
  for (const button of document.querySelectorAll("[data-question] button"))
    button.addEventListener("click", () => keepPrediction(button.parentElement));
  addEventListener("hashchange", readAddress);
  readAddress();
  document.documentElement.dataset.ready = "yes";
}
if ("DecompressionStream" in window) begin();
