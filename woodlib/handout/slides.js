// Shows a lesson as slides: one heading, idea, question or study at a time, in the order of the page. Nothing is copied:
// what is not on the slide is put out of sight, so that sliders and answers stay what they are.
const LONGEST = 380, SMALLEST = 15, LARGEST = 30; // letters of prose on a slide; size of type, px
function dealt(blocks) { // blocks in order -> [{title, blocks, alone}]
  const found = [];
  let title = document.title;
  for (const block of blocks) {
    const last = found[found.length - 1], heading = /^H[12]$/.test(block.tagName);
    const alone = block.matches(".code_cell") && block.querySelector("section, fieldset, details, pre, table, img, svg") !== null;
    const idea = block.tagName === "P" && block.firstChild && block.firstChild.nodeName === "STRONG";
    const length = last ? last.blocks.reduce((sum, one) => sum + one.textContent.length, 0) : 0;
    const bare = last && last.blocks.every((one) => /^H[1-6]$/.test(one.tagName));
    if (heading) title = block.textContent;
    if (!last || heading || last.alone || (!bare && (alone || idea || length + block.textContent.length > LONGEST))) {
      found.push({ title, blocks: [], alone: false });
    }
    const slide = found[found.length - 1];
    slide.blocks.push(block);
    slide.alone = alone;
  }
  return found;
}
function slideShow() {
  const blocks = [...document.querySelectorAll("main .text_cell_render > *, main .code_cell")].filter((one) => one.textContent.trim() || one.querySelector("svg, img"));
  const shown = dealt(blocks), root = document.documentElement, say = (text) => Object.assign(document.createElement("button"), { type: "button", textContent: text });
  const bar = document.createElement("nav"), [back, next, whole, start] = ["\u25c0 Back", "Next \u25b6", "Whole page", "Show as slides"].map(say);
  const place = Object.assign(document.createElement("span"), { role: "status" });
  let at = 0;
  const fit = () => { // the largest type at which the slide fits, else the smallest, and it is scrolled
    let size = LARGEST;
    do { root.style.fontSize = `${size}px`; size -= 1; } while (size >= SMALLEST && root.scrollHeight > innerHeight + 1);
  };
  const go = (number) => {
    at = Math.min(Math.max(number, 0), shown.length - 1);
    blocks.forEach((block) => block.classList.toggle("off-slide", !shown[at].blocks.includes(block)));
    place.textContent = `${at + 1} of ${shown.length}: ${shown[at].title}`;
    back.disabled = at === 0, next.disabled = at === shown.length - 1;
    fit(), scrollTo(0, 0);
  };
  const leave = () => {
    delete root.dataset.slides, (root.style.fontSize = ""), (bar.hidden = true), (start.hidden = false);
    blocks.forEach((block) => block.classList.remove("off-slide"));
    shown[at].blocks[0].scrollIntoView();
  };
  const enter = () => { (root.dataset.slides = "yes"), (bar.hidden = false), (start.hidden = true), go(at); };
  bar.className = "slide-bar", bar.setAttribute("aria-label", "Slides"), (bar.hidden = true);
  bar.append(back, place, next, whole), document.body.append(bar), document.querySelector("main nav").append(" ", start);
  shown.forEach((slide) => slide.blocks[0].classList.add("slide-begins"));
  start.addEventListener("click", enter), whole.addEventListener("click", leave);
  back.addEventListener("click", () => go(at - 1)), next.addEventListener("click", () => go(at + 1));
  addEventListener("resize", () => root.dataset.slides && fit());
  addEventListener("click", (event) => { // a button may open a study that was covered, or say a sentence
    if (root.dataset.slides && event.target.closest("main button")) setTimeout(fit, 50);
  });
  addEventListener("keydown", (event) => {
    const typed = event.target.matches("input, select, textarea, summary") || (event.key === " " && event.target.matches("button"));
    if (!root.dataset.slides || event.altKey || event.ctrlKey || event.metaKey || (typed && event.key !== "Escape")) return;
    const act = { ArrowRight: () => go(at + 1), PageDown: () => go(at + 1), " ": () => go(at + 1), ArrowLeft: () => go(at - 1), PageUp: () => go(at - 1),
      Home: () => go(0), End: () => go(shown.length - 1), Escape: leave }[event.key];
    if (act) event.preventDefault(), act();
  });
  if (new URLSearchParams(location.hash.slice(1)).has("slides")) enter();
}
slideShow();
