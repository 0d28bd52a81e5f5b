// Parts are dragged, or moved by the arrow keys, on small drawings of their boards; the form takes their places.

const form = document.querySelector("#by-hand form");
const part = form.elements.part;
const board = form.elements.board;
const MILLIMETRES = 25.4;
const METRIC = form.dataset.unit === "mm";
const STEP = METRIC ? 5 / MILLIMETRES : 0.25;
const GRID = METRIC ? MILLIMETRES : 16; // whole steps of it in an inch: millimetres, or sixteenths
const LINE = 1.9; // how wide a part is that a code fits on in full size, in inches of the board
const SMALLEST = 8; // of letters that are read, in pixels

const shown = (inches) => {
  if (METRIC) return `${Math.round(inches * MILLIMETRES * 10) / 10}`;
  const whole = Math.floor(inches);
  let [above, below] = [Math.round((inches - whole) * 16), 16];
  while (above && above % 2 === 0) [above, below] = [above / 2, below / 2];
  if (!above) return `${whole}`;
  return whole ? `${whole}-${above}/${below}` : `${above}/${below}`;
};

const place = (group, x, y) => {
  const svg = group.ownerSVGElement;
  const { width: length, height: width } = svg.viewBox.baseVal;
  const mine = { length: Number(group.dataset.length), width: Number(group.dataset.width) };
  const held = (value, most) => Math.min(Math.max(0, Math.round(value * GRID) / GRID), most);
  const [left, low] = [held(x, length - mine.length), held(y, width - mine.width)];
  group.dataset.x = left;
  group.dataset.y = low;
  group.setAttribute("transform", `translate(${left} ${width - low - mine.width})`);
  part.value = group.dataset.code;
  board.value = svg.closest("figure").dataset.board;
  form.elements.from_end.value = shown(left);
  form.elements.from_edge.value = shown(low);
  group.classList.add("moved");
};

const inBoard = (svg, event) => {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
  return [at.x, svg.viewBox.baseVal.height - at.y];
};

// A code is as large as its part allows; where that is too small to be read, its title tells it.
const letter = (group) => {
  const text = group.querySelector("text");
  text.style.removeProperty("font-size");
  text.style.removeProperty("display");
  const { width: long } = text.getBBox();
  if (!long) return;
  const scale = Math.min(1, (Number(group.dataset.length) - 0.4) / long, Number(group.dataset.width) / LINE);
  const size = Number.parseFloat(getComputedStyle(text).fontSize) * scale;
  text.style.setProperty("font-size", `${size}px`);
  if (size * group.getScreenCTM().a < SMALLEST) text.style.setProperty("display", "none");
};

const parts = document.querySelectorAll(".placing .part");
const letterAll = () => parts.forEach(letter);

for (const each of document.querySelectorAll(".placing, .placing-told")) each.hidden = false;
document.querySelector("#by-hand").addEventListener("toggle", letterAll);
window.addEventListener("resize", letterAll);

for (const group of parts) {
  const svg = group.ownerSVGElement;
  group.querySelector("text").textContent = group.dataset.code;
  group.addEventListener("pointerdown", (event) => {
    const [x, y] = inBoard(svg, event);
    const off = [x - Number(group.dataset.x), y - Number(group.dataset.y)];
    group.setPointerCapture(event.pointerId);
    const move = (next) => {
      const [toX, toY] = inBoard(svg, next);
      place(group, toX - off[0], toY - off[1]);
    };
    group.addEventListener("pointermove", move);
    // However it ends: a finger may also be taken over by scrolling.
    const end = () => group.removeEventListener("pointermove", move);
    group.addEventListener("lostpointercapture", end, { once: true });
    event.preventDefault();
    group.focus();
  });
  group.addEventListener("keydown", (event) => {
    const by = event.shiftKey ? STEP * 8 : STEP;
    const ways = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, by], ArrowDown: [0, -by] };
    const way = ways[event.key];
    if (!way) return;
    event.preventDefault();
    place(group, Number(group.dataset.x) + way[0], Number(group.dataset.y) + way[1]);
  });
}

letterAll();
