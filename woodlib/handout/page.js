// Draws frozen studies again when a control moves. It knows tables, interpolation, choices, thresholds and how
// numbers are written; what the numbers mean it does not know.
const OPERATIONS = {
  "+": (a, b) => a + b, "-": (a, b) => a - b, "*": (a, b) => a * b, "/": (a, b) => a / b,
  larger: Math.max, smaller: Math.min, reached: (a, b) => (a >= b ? 1 : 0),
};
const SLACK = 1e-6; // of one step: a number this close to a tick counts as that tick
let units = START_UNITS;
const studies = [];

function steps(number, perUnit, rounding) {
  const x = number * perUnit;
  if (rounding === "up") return Math.ceil(x - SLACK);
  if (rounding === "down") return Math.floor(x + SLACK);
  return Math.sign(x) * Math.floor(Math.abs(x) + 0.5 + SLACK);
}

function fraction(count, denominator) {
  let top = count % denominator, bottom = denominator;
  const whole = (count - top) / denominator;
  if (!top) return String(whole);
  while (top % 2 === 0) { top /= 2; bottom /= 2; }
  return (whole ? whole + "-" : "") + top + "/" + bottom;
}

function writePart(part, number, rounding) {
  const count = steps(number * part.scale + part.offset, part.steps_per_unit, rounding);
  let digits = part.denominator ? fraction(Math.abs(count), part.denominator)
    : (Math.abs(count) / part.steps_per_unit).toFixed(part.decimals);
  if (part.trim && digits.includes(".")) digits = digits.replace(/0+$/, "").replace(/\.$/, "");
  if (count < 0) digits = "-" + digits;
  return digits + (part.one && digits === "1" ? part.one : part.suffix);
}

function write(number, format, rounding) {
  const texts = format.parts.map((part) => writePart(part, number, rounding || format.rounding));
  if (units === "inch") return texts[0];
  if (units === "metric") return texts[texts.length - 1];
  return texts[0] + texts.slice(1).map((text) => " (" + text + ")").join("");
}

class Study {
  constructor(section, data) {
    Object.assign(this, { section, data, id: section.id, shape: -1 });
    this.controls = data.inputs.map((input) => section.querySelector(`[data-input="${input.key}"]`));
    this.places = data.inputs.map((input) => input.options ? input.values.map((_, k) => k)
      : [...Array(input.count).keys()].map((k) => input.low + k * input.step).concat(input.own).sort((a, b) => a - b));
    this.start = data.inputs.map((input, k) => this.nearest(k, input.start));
    this.controls.forEach((control) => control.addEventListener("input", () => this.moved()));
    section.querySelector("[data-back]").addEventListener("click", () => { this.place(this.start); this.moved(); });
    section.querySelectorAll("[hidden]").forEach((element) => (element.hidden = false));
  }

  nearest(k, value) {
    const away = this.places[k].map((place) => Math.abs(place - value));
    return away.indexOf(Math.min(...away));
  }

  get position() {
    return this.controls.map((c) => (c.type === "checkbox" ? Number(c.checked) : c.type === "range" ? Number(c.value) : c.selectedIndex));
  }

  place(position) {
    this.controls.forEach((c, k) => {
      if (c.type === "checkbox") c.checked = Boolean(position[k]);
      else if (c.type === "range") c.value = position[k];
      else c.selectedIndex = position[k];
    });
  }

  // The numbers of the answer where the controls stand: table columns, common motions, then the decided steps.
  numbers(position) {
    const data = this.data;
    let which = 0, basis = [1], span = 0;
    data.inputs.forEach((input, k) => {
      if (input.options) { which = which * input.options.length + position[k]; return; }
      const [low, high, count] = data.spans[span++];
      const x = (2 * (this.places[k][position[k]] - low)) / (high - low) - 1;
      const t = [1, x];
      for (let n = 2; n < count; n++) t.push(2 * x * t[n - 1] - t[n - 2]);
      basis = basis.flatMap((factor) => t.slice(0, count).map((value) => factor * value));
    });
    const [number, place] = data.cases[which];
    const shape = data.shapes[number];
    const sums = (table) => table.cases[place].map((sparse, k) => {
      let at = -1, sum = 0;
      for (let n = 0; n < sparse.length; n += 2) sum += basis[(at += sparse[n])] * sparse[n + 1];
      return sum * table.quantum[k];
    });
    const leaves = new Float64Array(shape.leaves), made = [];
    shape.still[0].forEach((slot, k) => (leaves[slot] = shape.still[1][k]));
    sums(shape.exact).forEach((value, k) => (leaves[shape.columns[k]] = value));
    const amounts = sums(shape.common);
    shape.motions.forEach((slot, j) => {
      let sum = 0;
      for (let k = 0; k < amounts.length; k++) sum += amounts[k] * shape.modes[k][j];
      leaves[slot] = shape.mean[j] + sum * shape.unit;
    });
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
    const position = this.position, answer = this.numbers(position);
    const shape = this.data.shapes[answer.number], svg = this.section.querySelector("svg");
    if (this.shape !== answer.number) {
      svg.querySelector("[data-marks]").innerHTML = shape.svg.replaceAll("CLIP", this.id);
      this.section.querySelector("[data-readings]").innerHTML = shape.readings;
      this.nodes = [...svg.querySelectorAll("path,circle,text"), ...this.section.querySelectorAll("[data-s]"), {}];
      this.shape = answer.number;
    }
    for (const [kind, element, what, ...rest] of shape.updates) {
      const node = this.nodes[element];
      if (kind === 0) {
        const slots = rest[0].length === 2 ? Array.from({ length: -rest[0][1] }, (_, k) => rest[0][0] + k) : rest[0];
        let path = "M";
        slots.forEach((slot, k) => (path += answer.at(slot).toFixed(1) + (k % 2 ? " " : ",")));
        node.setAttribute("d", what ? path + "Z" : path);
      } else if (kind === 1) node.setAttribute(what, answer.at(rest[0]).toFixed(1));
      else if (kind === 2) node.setAttribute("class", what + this.say(rest[0], answer) + this.say(rest[1], answer));
      else node.textContent = this.say(what, answer);
    }
    this.data.inputs.forEach((input, k) => {
      const text = input.options ? input.options[position[k]] : write(this.places[k][position[k]], this.data.formats[input.kind]);
      this.section.querySelector(`[data-value="${input.key}"]`).textContent = text;
      if (!input.options) this.controls[k].setAttribute("aria-valuetext", text);
    });
    this.headline = this.section.querySelector("[data-s]").textContent;
  }

  moved() {
    this.draw();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      const spoken = [...this.section.querySelectorAll("[data-readings] dt")].map((dt) => dt.textContent + ": " + dt.nextSibling.firstChild.textContent);
      const alt = this.nodes[this.nodes.length - 1].textContent || this.section.querySelector("desc").dataset.lead;
      this.section.querySelector("desc").textContent = [alt, this.headline, ...spoken.map((text) => text + ".")].join(" ");
      this.section.querySelector("[role=status]").textContent = this.headline;
      keepAddress();
    }, 500);
  }
}

// The fragment of the address holds every control that is not at its start, so that a link can be sent.
function keepAddress() {
  const kept = new URLSearchParams();
  for (const study of studies)
    study.position.forEach((place, k) => place !== study.start[k] && kept.set(`${study.id}.${study.data.inputs[k].key}`, place));
  history.replaceState(null, "", "#" + kept);
}

function readAddress() {
  const kept = new URLSearchParams(location.hash.slice(1));
  for (const study of studies)
    study.place(study.data.inputs.map((input, k) => {
      const place = Number(kept.get(`${study.id}.${input.key}`) ?? NaN);
      return Number.isInteger(place) && place >= 0 && place < study.places[k].length ? place : study.start[k];
    }));
}

async function begin() {
  for (const section of document.querySelectorAll("[data-study]")) {
    const packed = Uint8Array.from(atob(section.querySelector("[data-table]").textContent), (c) => c.charCodeAt(0));
    const text = await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
    studies.push(new Study(section, JSON.parse(text)));
  }
  document.getElementById("units").hidden = false;
  readAddress();
  addEventListener("hashchange", () => { readAddress(); studies.forEach((study) => study.draw()); });
  for (const choice of document.querySelectorAll("[name=units]"))
    choice.addEventListener("change", () => { units = choice.value; studies.forEach((study) => study.draw()); });
  studies.forEach((study) => study.draw());
  document.documentElement.dataset.ready = "yes";
}
if ("DecompressionStream" in window) begin();
