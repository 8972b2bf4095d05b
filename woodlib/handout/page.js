// Draws frozen studies again when a control moves. It knows tables, interpolation, choices, thresholds and how
// numbers are written; what the numbers mean it does not know.
const SLACK = 1e-6; // of one step: a number this close to a tick counts as that tick
const HOLDS = { checkbox: "checked", range: "value", "select-one": "selectedIndex" };
let studies = [], units = START_UNITS;
function wholeSteps(number, perUnit, rounding) {
  const x = number * perUnit;
  if (rounding === "nearest") return Math.sign(x) * Math.floor(Math.abs(x) + 0.5 + SLACK);
  return rounding === "up" ? Math.ceil(x - SLACK) : Math.floor(x + SLACK);
}
function fraction(count, denominator) {
  let top = count % denominator, bottom = denominator, whole = (count - top) / denominator;
  for (; top && top % 2 === 0; top /= 2) bottom /= 2;
  return top ? (whole ? whole + "-" : "") + top + "/" + bottom : String(whole);
}
function writePart(part, number, rounding) {
  const count = wholeSteps(number * part.scale + part.offset, part.steps_per_unit, rounding), size = Math.abs(count);
  let digits = part.denominator ? fraction(size, part.denominator) : (size / part.steps_per_unit).toFixed(part.decimals);
  if (part.trim && digits.includes(".")) digits = digits.replace(/\.?0+$/, "");
  return (count < 0 ? "-" : "") + digits + (part.one && count > 0 && digits === "1" ? part.one : part.suffix);
}
function write(number, format, rounding) { // in brackets stands what is shown before them
  const [head, tail] = format.parts, way = rounding || format.rounding, text = writePart(head, number, way);
  if (units !== "both" || !tail) return units === "metric" && tail ? writePart(tail, number, way) : text;
  const steps = wholeSteps(number * head.scale + head.offset, head.steps_per_unit, way), fine = head.steps_per_unit === 64;
  const said = fine ? number : (steps / head.steps_per_unit - head.offset) / head.scale;
  const halves = { steps_per_unit: Math.abs(said) < tail.halves_below ? 2 : 1, decimals: 1 };
  return `${text} (${writePart(tail.halves_below ? { ...tail, ...halves } : tail, said, fine ? way : "nearest")})`;
}
const each = (selector, act) => document.querySelectorAll(selector).forEach(act);
const px = (number) => String(Math.round(number * 10) / 10);
const put = (node, name, text) => (name ? node.setAttribute(name, text) : (node.textContent = text));
class Study { // it stands as it was written until its table is unpacked and a control moves
  constructor(section) {
    [this.controls, this.values] = ["input", "value"].map((kind) => [...section.querySelectorAll(`[data-${kind}]`)]);
    const [start, last] = ["start", "last"].map((name) => this.controls.map((control) => Number(control.dataset[name])));
    Object.assign(this, { section, start, last, names: this.controls.map((control) => `${section.id}.${control.dataset.input}`) });
    this.shown = section.dataset.study + start; // the units and places that the page shows now
    this.controls.forEach((control) => control.addEventListener("input", () => this.moved()));
    const play = this.find("[data-play]");
    if (play) play.addEventListener("click", () => this.play(play));
    this.find("[data-back]").addEventListener("click", () => { this.position = start; this.moved(); });
  }
  find(selector) { return this.section.querySelector(selector); }
  get position() { return this.controls.map((control) => Number(control[HOLDS[control.type]])); }
  set position(places) { this.controls.forEach((control, k) => { control[HOLDS[control.type]] = places[k]; }); }
  async unpack() {
    const text = atob(this.find("[data-table]").textContent), packed = new Uint8Array(text.length);
    for (let k = 0; k < packed.length; k++) packed[k] = text.charCodeAt(k);
    const unpacked = new Response(packed).body.pipeThrough(new DecompressionStream("gzip"));
    const data = JSON.parse(await new Response(unpacked).text()), kinds = Object.entries(data.shapes); // {kind: [of every shape]}
    this.data = { ...data, shapes: kinds[0][1].map((_, k) => Object.fromEntries(kinds.map(([kind, all]) => [kind, all[k]]))) };
    const { number } = this.numbers(this.start), [svg, readings] = ["marks", "readings"].map((name) => this.find(`[data-${name}]`).innerHTML);
    Object.assign(this.data.shapes[number], { svg, readings }); // the page holds them already
    this.take(number);
    this.draw();
  }
  // The numbers of the answer at a position: table columns, common motions, then the decided steps.
  numbers(position) {
    const which = position.reduce((sum, place, k) => sum + place * this.data.inputs[k].stride, 0);
    const orders = this.data.spans.map(([input, low, high, count]) => { // per span, the Chebyshev polynomials at its place
      const x = (2 * (this.data.inputs[input].places[position[input]] - low)) / (high - low) - 1, t = [1, x];
      while (t.length < count) t.push(2 * x * t[t.length - 1] - t[t.length - 2]);
      return t;
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
    const fill = (slots, values) => slots.forEach((slot, k) => { leaves[slot] = values[k]; });
    fill(...shape.still), fill(shape.columns, sums(shape.exact)), fill(shape.motions, moved);
    for (const [slot, source, scale, shift] of shape.echoes) leaves[slot] = scale * leaves[source] + shift;
    const at = (slot) => (slot >= 0 ? leaves[slot] : made[-1 - slot]);
    const [names, calls, first, second] = shape.steps, operand = (slot) => (slot >= 0 ? leaves[slot] : made[made.length + slot]);
    calls.forEach((name, k) => made.push(OPERATIONS[names[name]](operand(first[k]), operand(second[k]))));
    return { number, at, words: shape.words[place] };
  }
  say(part, answer) {
    if (typeof part === "string") return part;
    if (part[0] === "w") return answer.words[part[1]];
    if (part[0] === "n") return write(answer.at(part[1]), this.data.formats[part[2]], part[3]);
    if (part[0] === "k") return this.say(part[2][Math.round(answer.at(part[1]))], answer);
    return part.slice(1).map((inner) => this.say(inner, answer)).join("");
  }
  take(number) { // the drawing and the readings that stand in the page are of this shape
    const all = (selector) => [...this.section.querySelectorAll(selector)];
    const nodes = [...all("[data-marks] :is(path,circle,text)"), ...all("[data-s]"), { textContent: "" }];
    Object.assign(this, { shape: number, told: nodes[nodes.length - 1], terms: all("[data-readings] dt") });
    this.updates = this.data.shapes[number].updates.map(([kind, element, what, first, second]) => {
      const slots = kind === 0 && first.length === 2 ? Array.from({ length: -first[1] }, (_, k) => first[0] + k) : first;
      const path = ({ at }) => "M" + slots.map((slot) => px(at(slot))).join(" ") + (what ? "Z" : "");
      const words = (answer) => (kind === 2 ? what + this.say(first, answer) + this.say(second, answer) : this.say(what, answer));
      const text = [path, ({ at }) => px(at(first)), words, words][kind];
      return { node: nodes[element], name: ["d", what, "class", ""][kind], text };
    });
  }
  draw() {
    const position = this.position, state = units + position, unfolded = this.find("details[open]") !== null;
    if (!this.data || state === this.shown) return;
    const answer = this.numbers(position), shape = this.data.shapes[answer.number];
    if (this.shape !== answer.number) {
      this.find("[data-marks]").innerHTML = shape.svg.replaceAll("CLIP", this.section.id);
      this.find("[data-readings]").innerHTML = shape.readings;
      this.section.querySelectorAll("details").forEach((details) => (details.open = unfolded));
      this.take(answer.number);
    }
    for (const update of this.updates) { // what has not changed is left alone: that is most of the page
      const text = update.text(answer);
      if (update.last !== text) put(update.node, update.name, (update.last = text));
    }
    this.section.toggleAttribute("data-trial", position.join() !== this.start.join());
    this.data.inputs.forEach((input, k) => {
      const text = input.options ? input.options[position[k]] : write(input.places[position[k]], this.data.formats[input.kind]);
      if (this.values[k].textContent !== text) put(this.values[k], "", text);
      if (this.controls[k].type === "range") put(this.controls[k], "aria-valuetext", text);
    });
    const readings = this.terms.map((term) => `${term.textContent}: ${term.nextSibling.firstChild.textContent}.`);
    put(this.find("desc"), "", [this.told.textContent, this.find("[data-s]").textContent, ...readings].filter(Boolean).join(" "));
    this.shown = state, tellTrials();
  }
  moved() { this.draw(); clearTimeout(this.timer); this.timer = setTimeout(() => this.settled(), 500); }
  play(button) { // step along the first control, round and round, until the button or the control stops it
    const control = this.controls[0], stop = () => { clearInterval(this.playing); this.playing = 0; button.textContent = "\u25b6"; };
    if (this.playing) return stop();
    control.addEventListener("pointerdown", stop, { once: true }), control.addEventListener("keydown", stop, { once: true });
    button.textContent = "\u25a0";
    this.playing = setInterval(() => { control.value = (Number(control.value) % this.last[0]) + 1; this.draw(); }, 900);
  }
  settled() { // told once the control rests: one polite sentence, and the address
    this.find("[role=status]").textContent = this.find("[data-s]").textContent;
    const kept = studies.flatMap((study) => study.position.map((place, k) => [study.names[k], place, place !== study.start[k]]));
    history.replaceState(null, "", "#" + new URLSearchParams(kept.filter((entry) => entry.pop())));
  }
}
function tellTrials() { // what stands elsewhere than the piece as agreed, for a page that is printed so
  const moved = studies.flatMap((study) => study.controls.filter((_, k) => study.position[k] !== study.start[k]));
  document.documentElement.toggleAttribute("data-trial", moved.length > 0);
  const told = moved.map((control) => `${control.labels[0].textContent} ${control.parentElement.querySelector("[data-value]").textContent}`);
  each("[data-trials]", (place) => put(place, "", told.join("; ")));
}
function readAddress() { // controls that the address does not name stand at their start
  const kept = new URLSearchParams(location.hash.slice(1));
  for (const study of studies) {
    const named = study.names.map((name) => Number(kept.get(name) || NaN));
    study.position = named.map((place, k) => (Number.isInteger(place) && place >= 0 && place <= study.last[k] ? place : study.start[k]));
    study.draw();
  }
}
async function begin() { // a control that moves before its table is unpacked is answered as soon as it is
  each("[data-study]", (section) => studies.push(new Study(section)));
  each("body [hidden]", (element) => (element.hidden = false));
  each("[name=units]", (choice) => choice.addEventListener("change", () => { document.documentElement.dataset.units = units = choice.value; studies.forEach((study) => study.draw()); }));
  addEventListener("hashchange", readAddress), readAddress();
  document.documentElement.dataset.live = "yes";
  await Promise.all(studies.map((study) => study.unpack()));
  document.documentElement.dataset.ready = "yes";
}
if ("DecompressionStream" in window) begin();
