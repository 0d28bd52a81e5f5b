// What a person with other eyes or fingers would stumble over; each function gives one line a fault.
(() => {
  let first, last, aimed, hit;
  let sameCount = 0;
  const TARGETS = "a[href], button, input:not([type=hidden]), select, textarea, summary";
  const MOST = 6;

  function named(element) {
    const classes = element.getAttribute("class");
    const words = (element.textContent || element.value || "").trim().replace(/\s+/g, " ").slice(0, 40);
    const id = element.id ? `#${element.id}` : "";
    return `${element.localName}${id}${classes ? `.${classes.trim().replace(/\s+/g, ".")}` : ""} “${words}”`;
  }

  function isClippedAway(element) {
    for (let each = element; each; each = each.parentElement) if (getComputedStyle(each).clipPath !== "none") return true;
    return false;
  }

  // Kept for screen readers, or for those who come by the keyboard.
  const isUnseen = (element) => element.closest(".unseen, .skip, [hidden]") || isClippedAway(element);
  const isSeen = (element) => element.checkVisibility({ visibilityProperty: true }) && !isUnseen(element);
  const scrolls = (style) => /auto|scroll/.test(style.overflowX) || /auto|scroll/.test(style.overflowY);

  function scroller(element) {
    for (let each = element; each && each !== document.body; each = each.parentElement) if (scrolls(getComputedStyle(each))) return each;
    return null;
  }

  function sideways() {
    const room = document.documentElement.clientWidth;
    const over = document.documentElement.scrollWidth - room;
    if (over <= 0) return [];
    const out = [...document.body.querySelectorAll("*")].filter((each) => isSeen(each) && each.getBoundingClientRect().right > room + 0.5 && !scroller(each.parentElement));
    return [`${over} px too wide`, ...out.slice(-MOST).map((each) => `${Math.round(each.getBoundingClientRect().right)} ${named(each)}`)];
  }

  // The nearest box around a text that has an edge or a ground of its own.
  function boxAround(element) {
    for (let each = element; each && each !== document.body; each = each.parentElement) {
      const style = getComputedStyle(each);
      if (scrolls(style)) return null;
      const edge = style.display !== "inline" && (style.borderRightWidth !== "0px" || style.backgroundColor !== "rgba(0, 0, 0, 0)");
      if (edge || style.overflowX !== "visible") return each;
    }
    return null;
  }

  function clipped() {
    const found = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
      const around = text.parentElement;
      if (!text.data.trim() || around.closest("svg, option, select, textarea, script") || !isSeen(around)) continue;
      const box = boxAround(around);
      if (!box) continue;
      range.selectNodeContents(text);
      const [inner, outer] = [range.getBoundingClientRect(), box.getBoundingClientRect()];
      if (!inner.width || getComputedStyle(around).fontSize === "0px") continue;
      const over = Math.max(inner.right - outer.right, outer.left - inner.left, inner.bottom - outer.bottom, outer.top - inner.top);
      if (over > 1.5) found.push(`${over.toFixed(1)} px out of ${named(box)}: ${text.data.trim().slice(0, 40)}`);
    }
    return found.slice(0, MOST);
  }

  function targets() {
    return [...document.querySelectorAll(TARGETS)].filter(isSeen).map((element) => {
      const whole = element.matches("input[type=checkbox], input[type=radio]") ? element.closest(".tick") || element : element;
      return { element, place: whole.getBoundingClientRect() };
    });
  }

  function isInText(element) {
    const style = getComputedStyle(element);
    return element.localName === "a" && (style.display === "inline" || element.matches(".why")) && element.closest("p, li, dt, dd, td, th, h1, h2, h3");
  }

  function smallTargets(least) {
    // A place in a drawing is as small as what is drawn; the list beside it, as high as a finger, does the same.
    const listed = document.querySelector("select#at");
    const low = targets().filter(({ element, place }) => !(listed && element.matches("a[data-pick]")) && place.height < least - 0.5 && !isInText(element));
    return low.slice(0, MOST).map(({ element, place }) => `${place.height.toFixed(1)} px high: ${named(element)}`);
  }

  function crampedTargets(apart) {
    const all = targets().filter(({ element }) => !isInText(element));
    const found = [];
    for (const [index, one] of all.entries()) {
      for (const other of all.slice(index + 1)) {
        if (one.element.contains(other.element) || other.element.contains(one.element)) continue;
        const [a, b] = [one.place, other.place];
        const gap = Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);
        if (gap < apart - 0.5) found.push(`${gap.toFixed(1)} px between ${named(one.element)} and ${named(other.element)}`);
      }
    }
    return found.slice(0, MOST);
  }

  function smallText(least) {
    const small = new Map();
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
      const around = text.parentElement;
      if (!text.data.trim() || around.closest("svg, script, .skip") || !isSeen(around)) continue;
      const size = parseFloat(getComputedStyle(around).fontSize);
      if (size > 0 && size < least - 0.05) small.set(named(around), size);
    }
    return [...small].slice(0, MOST).map(([name, size]) => `${size} px: ${name}`);
  }

  function tables() {
    return [...document.querySelectorAll("main table")].filter((each) => isSeen(each) && !each.closest("form, details")).length;
  }

  function onPaper(tablesOnScreen) {
    const left = [...document.querySelectorAll("nav, header.bar, footer, button, input")].filter((each) => each.checkVisibility() && each.getBoundingClientRect().height > 0);
    const lost = tablesOnScreen - tables();
    return [...left.slice(0, MOST).map((each) => `printed: ${named(each)}`), ...(lost > 0 ? [`${lost} tables are not printed`] : [])];
  }

  // Amounts, sizes and codes: 11- at the end of a line and 3/4 on the next is read as 11.
  const WHOLE = /[$€£]\s?\d[\d,]*(?:\.\d+)?|≈?\d+-\d+\/\d+|\d[\d,]*\.\d+|\b(?:\d+-)?[A-Z]{1,2}-R\d+(?:-\w+)*\b|\bR\d+-\d+\b|\b[A-Z]-\d{4}\b/g;

  function torn() {
    const found = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
      const around = text.parentElement;
      if (!text.data.trim() || around.closest("svg, option, select, textarea, script, .faults a") || !isSeen(around)) continue;
      for (const each of text.data.matchAll(WHOLE)) {
        range.setStart(text, each.index);
        range.setEnd(text, each.index + each[0].length);
        const lines = new Set([...range.getClientRects()].filter((part) => part.width > 0.5).map((part) => Math.round(part.top)));
        if (lines.size > 1) found.push(`${each[0]} on ${lines.size} lines: ${named(around)}`);
      }
    }
    // In a row of boxes it would be a box of its own, apart from the words around it.
    const apart = [...document.querySelectorAll(".unbroken")].filter((each) => isSeen(each) && getComputedStyle(each).display !== "inline" && [each.previousSibling, each.nextSibling].some((beside) => beside?.nodeType === Node.TEXT_NODE && beside.data.trim()));
    return [...found, ...apart.map((each) => `set apart from its words: ${named(each)}`)].slice(0, MOST);
  }

  // A table that is wider than what holds it, and cannot be pushed along within.
  function spilled() {
    const wide = [...document.querySelectorAll("main table")].filter((each) => isSeen(each) && !scroller(each.parentElement) && each.offsetWidth > each.parentElement.clientWidth + 1);
    return wide.slice(0, MOST).map((each) => `${each.offsetWidth - each.parentElement.clientWidth} px wider than its place: ${named(each)}`);
  }

  // A cell that is laid out as something else leaves its column to its neighbour.
  function shifted() {
    const rows = [...document.querySelectorAll("main tr")].filter((each) => isSeen(each) && getComputedStyle(each).display === "table-row");
    const out = rows.flatMap((row) => [...row.cells]).filter((cell) => isSeen(cell) && getComputedStyle(cell).display !== "table-cell");
    return out.slice(0, MOST).map((cell) => `not in its column: ${named(cell)}`);
  }

  function space(css) {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(css);
    document.adoptedStyleSheets = css ? [sheet] : [];
  }

  const isShown = (element) => element.checkVisibility({ visibilityProperty: true });
  let unshown = [];
  const noteUnshown = () => { unshown = [...document.body.querySelectorAll("*")].filter((each) => !isShown(each)); };

  // What has come into sight since then is marked; says whether there is any.
  function markNew() {
    const fresh = new Set(unshown.filter((each) => each.isConnected && isShown(each)));
    for (const each of fresh) if (!fresh.has(each.parentElement)) each.dataset.new = "";
    return fresh.size > 0;
  }

  // A bar that stays in view lies over whatever passes under it: axe would take that for a target too small.
  function settle() {
    for (const each of document.querySelectorAll("main *")) if (getComputedStyle(each).position === "sticky") each.style.position = "static";
  }

  // Where Tab is now: which stop, whether its ring can be seen, and whether something lies over it.
  function stop() {
    const here = document.activeElement;
    if (!here || here === document.body || here === document.documentElement) return null;
    const shown = here.matches(".views input") ? here.nextElementSibling : here;
    const style = getComputedStyle(shown);
    const isPart = here.type === "date" && here === last; // the day's parts and its button have rings of their own
    const drawn = here.matches("a[data-pick]") && getComputedStyle(here.querySelector("rect")); // its outline would be scaled
    const ring = isPart || (drawn ? drawn.stroke !== "none" && drawn.vectorEffect === "non-scaling-stroke" && parseFloat(drawn.strokeWidth) >= 3 : style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 3);
    const place = shown.getBoundingClientRect();
    const x = Math.min(Math.max(place.left + place.width / 2, 1), innerWidth - 2);
    const y = Math.max(place.top, 0) + Math.min(place.height / 2, 12);
    const at = document.elementFromPoint(x, y);
    const free = at && (shown.contains(at) || at.contains(shown) || at.closest("label")?.control === here);
    const same = here === last ? sameCount + 1 : 1;
    const again = same === 1 && "stopped" in here.dataset;
    first ??= here;
    [last, sameCount] = [here, same];
    here.dataset.stopped = "";
    return { name: named(here), again, is_first: here === first, same, ring, free: Boolean(free) };
  }

  function unreached() {
    const all = [...document.querySelectorAll(`${TARGETS}, [tabindex="0"]`)].filter((each) => each.checkVisibility({ visibilityProperty: true }) && each.tabIndex >= 0 && !each.disabled && !each.matches("label"));
    const missed = all.filter((each) => !("stopped" in each.dataset) && !(each.type === "radio" && document.querySelector(`input[name="${CSS.escape(each.name)}"][data-stopped]`)));
    return missed.slice(0, MOST).map((each) => `not reached: ${named(each)}`);
  }

  // Taps only tell where they come down: nothing is sent.
  function catchTaps() {
    const note = (event) => {
      event.preventDefault();
      event.stopImmediatePropagation();
      hit = event.target;
    };
    window.addEventListener("click", note, { capture: true });
    return targets().length;
  }

  function aim(index) {
    aimed = targets()[index].element;
    hit = null;
    aimed.scrollIntoView({ block: "center", behavior: "instant" });
    const place = targets()[index].place;
    return { name: named(aimed), x: place.left + place.width / 2, y: place.top + place.height / 2 };
  }

  const isHit = () => Boolean(hit) && (aimed.contains(hit) || hit.closest("label")?.control === aimed);

  window.looks = { sideways, clipped, smallTargets, crampedTargets, smallText, tables, onPaper, torn, spilled, shifted, noteUnshown, markNew, space, settle, stop, unreached, catchTaps, aim, isHit };
})();
