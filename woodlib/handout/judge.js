// Judges what is typed or chosen, with the library's own tables: forms of a number, units, bands and their sentences.
function plainText(text, marks) {
  const small = /([\u2070\u00b9\u00b2\u00b3\u2074-\u2079]+)[/\u2044\u2215]([\u2080-\u2089]+)/g;
  const one = (sign) => (sign.normalize("NFKC").includes("\u2044") && sign !== "\u2044" ? " " + sign.normalize("NFKC") : marks[sign] || sign);
  const typed = [...text.replace(small, " $1/$2")].map(one).join("").normalize("NFKC").replace(/\u2044/g, "/").toLowerCase();
  return typed.replace(/-\s+(?=[0-9]+\/)/g, "-").replace(/\s+/g, " ").replaceAll("''", '"').trim();
}
function exactNumber(text, rules) { // NaN for what is no number, or can be read two ways
  if (!new RegExp(`^(?:${rules.number})$`).test(text)) return NaN;
  const [, whole, top, bottom] = text.match(/^(?:([0-9]+)[-\s]\s*)?([0-9]+)\s*\/\s*([0-9]+)$/) || [];
  if (bottom) return Number(bottom) ? Number(whole || 0) + Number(top) / Number(bottom) : NaN;
  return new RegExp(`^(?:${rules.ambiguous})$`).test(text) ? NaN : Number(text.replace(",", "."));
}
function readTyped(given, rules) { // a number in SI, or NaN
  const stripped = given.replace(new RegExp(rules.loose, "i"), "").replace(new RegExp(rules.named, "i"), "");
  const text = plainText(stripped, rules.marks), whole = (pattern) => text.match(new RegExp(`^(?:${pattern})$`, "i"));
  if (!text || stripped.length > rules.longest) return NaN;
  const feet = rules.feet_and_inches && whole(rules.feet_and_inches);
  if (feet) {
    const size = Number(feet.groups.feet) * rules.units.ft[0] + exactNumber(feet.groups.inches, rules) * rules.units.in[0];
    return feet.groups.sign === "-" ? -size : size;
  }
  const found = whole(rules.one_number);
  if (!found) return NaN;
  const unit = (found.groups.unit || "").replace(/[ .]+$/, "");
  let line = Object.hasOwn(rules.units, unit) ? rules.units[unit] : null;
  if (!unit && !line && rules.bare_fraction && text.includes("/")) line = [rules.bare_fraction, 0];
  const number = line ? exactNumber(found.groups.number, rules) : NaN, size = found.groups.sign === "-" ? -number : number;
  return line ? size * line[0] + line[1] : NaN;
}
function judge(given, rules) { // {right: true, false or null, sentence}
  const said = given.trim().replace(/\s+/g, " ");
  if (!said) return { right: null, sentence: `There is no answer yet. ${rules.how}` };
  if (rules.choices) return { right: rules.choices[said][0], sentence: rules.choices[said][1] };
  const fill = (sentence, slots) => sentence.replace(/\{(\w+)\}/g, (_, name) => slots[name]);
  if (rules.ask_unit && /^[\d.,]+$/.test(said)) return { right: null, sentence: fill(rules.ask_unit, { given: `'${said}'`, bare: said }) };
  const value = readTyped(given, rules);
  const unread = /^[\d.,]+$/.test(said) ? rules.bare : rules.unread;
  if (!(Math.abs(value) < rules.most)) return { right: null, sentence: fill(unread, { given: `'${said}'` }) + " " + rules.how };
  if (rules.ask_sign && !said.includes("%") && value > 0 && value < 1) {
    const [number, hundredfold] = [value, 100 * value].map((share) => String(Number(share.toPrecision(6))));
    return { right: null, sentence: fill(rules.ask_sign, { given: `'${said}'`, number, hundredfold }) };
  }
  const band = rules.bands.find((one) => one.up_to === null || value <= one.up_to);
  const slots = { "{said}": said, "{more}": write(Math.abs(value - rules.answer), rules.format) };
  return { right: band.right, sentence: band.words.map((part) => slots[part] || part).join("") };
}
each("[data-exercise]", (form) => {
  const rules = JSON.parse(form.querySelector("[data-rules]").textContent), [check, way] = form.querySelectorAll("button");
  const told = form.querySelector("[role=status]"), fields = form.querySelectorAll("input");
  let tries = 0, last = "";
  const tell = (...sentences) => told.replaceChildren(...sentences.flatMap((text, k) => (k ? [document.createElement("br"), text] : [text])));
  const answer = () => {
    const field = form.querySelector("input:checked") || form.querySelector("input[type=text]"), found = judge(field ? field.value : "", rules);
    tries += found.right !== null;
    form.dataset.judged = found.right === null ? "" : found.right ? "fine" : "watch";
    if (way) way.disabled = tries < rules.tries && !found.right;
    tell((last = found.sentence));
  };
  check.addEventListener("click", answer);
  fields.forEach((field) => field.addEventListener("keydown", (event) => { if (event.key === "Enter") answer(); }));
  if (way) way.addEventListener("click", () => tell(last, `One way: ${rules.way}`));
  form.parentElement.hidden = false;
});
