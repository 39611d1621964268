// Puts the rows of tables in order and sifts them. Every table is whole without it; it moves rows and hides them, and makes none.
// A table is told apart by its class "sortable"; a cell is sorted by its data-v, else by the datetime of a time in it, else by its text.
(function () {
  "use strict";

  const say = document.currentScript.dataset;
  const language = document.documentElement.lang || "en";
  const names = new Intl.Collator(language, { numeric: true, sensitivity: "base" });

  function make(name, className, text) {
    const made = document.createElement(name);
    if (className) made.className = className;
    if (text !== undefined) made.textContent = text;
    return made;
  }

  // What a cell says, without words for the ears alone and the letters of notes.
  function textOf(cell) {
    const copy = cell.cloneNode(true);
    copy.querySelectorAll(".unseen, .mark, .said, .code, .unit, .how").forEach((part) => part.remove());
    return copy.textContent.replace(/\s+/g, " ").trim();
  }

  const decimal = say.decimal || ".";
  const NUMBER = new RegExp("^-?\\d+(\\" + decimal + "\\d+)?\\s?%?$");

  // A number as it is shown: spaces between thousands, a true minus sign, the language's decimal mark, hours and minutes. Null where it
  // is none.
  function numberOf(text) {
    const plain = text.replace(/(\d)\s(?=\d{3}(?!\d))/g, "$1").replace(/\u2212/g, "-");
    const clock = /^(-?)(\d+):([0-5]\d)$/.exec(plain);
    if (clock) return (clock[1] ? -1 : 1) * (Number(clock[2]) + Number(clock[3]) / 60);
    return NUMBER.test(plain) ? parseFloat(plain.replace(decimal, ".")) : null;
  }

  function keyOf(cell) {
    if (!cell) return null;
    const time = cell.querySelector("time[datetime]");
    const text = cell.dataset.v !== undefined ? cell.dataset.v : time ? time.dateTime : textOf(cell);
    if (text === "" || text === "–") return null;
    const number = numberOf(text);
    return number === null ? text : number;
  }

  // The cell that stands in a column, where cells may span several.
  function cellIn(row, column) {
    let at = 0;
    for (const cell of row.cells) {
      if (at === column) return cell;
      at += cell.colSpan;
      if (at > column) return null;
    }
    return null;
  }

  function compare(one, other) {
    if (typeof one === "number" && typeof other === "number") return one - other;
    if (typeof one === "number") return -1;
    if (typeof other === "number") return 1;
    return names.compare(one, other);
  }

  // What is moved: rows of the one body, or whole bodies by their first row, where a table has several.
  function unitsOf(table) {
    const bodies = Array.from(table.tBodies);
    return bodies.length > 1 ? bodies : Array.from(bodies[0] ? bodies[0].rows : []);
  }

  function rowOf(unit) {
    return unit.rows ? unit.rows[0] : unit;
  }

  // What is not known goes last, whichever way round.
  function inOrder(units, column, down) {
    const keyed = units.map((unit, place) => ({ unit: unit, place: place, key: keyOf(cellIn(rowOf(unit), column)) }));
    keyed.sort(function (one, other) {
      if (one.key === null || other.key === null) return (one.key === null) - (other.key === null) || one.place - other.place;
      return (down ? compare(other.key, one.key) : compare(one.key, other.key)) || one.place - other.place;
    });
    return keyed.map((one) => one.unit);
  }

  function put(table, units) {
    if (!units.length) return;
    const parent = units[0].parentNode;
    const after = units[units.length - 1].rows ? table.tFoot : null;
    const moved = document.createDocumentFragment();
    moved.append(...units);
    parent.insertBefore(moved, after && after.parentNode === parent ? after : null);
  }

  function sorts(table, tell) {
    const before = unitsOf(table);
    const row = table.tHead && table.tHead.rows[table.tHead.rows.length - 1];
    if (!row || before.length < 2) return;
    let column = 0;
    for (const head of Array.from(row.cells)) {
      if (head.textContent.trim()) button(table, head, column, before, tell);
      column += head.colSpan;
    }
  }

  function button(table, head, column, before, tell) {
    const label = head.querySelector(".label");
    const name = label ? label.textContent.trim() : textOf(head);
    const made = make("button", "sort");
    made.type = "button";
    made.setAttribute("aria-label", say.by.replace("{name}", () => name));
    head.abbr = name;
    const largestFirst = head.classList.contains("n");
    made.addEventListener("click", function () {
      const now = head.getAttribute("aria-sort");
      const first = largestFirst ? "descending" : "ascending";
      const next = now === null ? first : now === first ? (largestFirst ? "ascending" : "descending") : null;
      table.querySelectorAll("thead [aria-sort]").forEach((other) => other.removeAttribute("aria-sort"));
      if (next) head.setAttribute("aria-sort", next);
      put(table, next ? inOrder(before, column, next === "descending") : before);
      tell(next ? say[next].replace("{name}", () => name) : say.before);
    });
    head.append(made);
  }

  // ---- Sifting

  function fold(text) {
    return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/ø/g, "o").replace(/æ/g, "ae").replace(/ß/g, "ss").replace(/ð/g, "d").replace(/þ/g, "th");
  }

  function sifts(table, field, tell) {
    const units = unitsOf(table);
    const texts = units.map((unit) => fold(unit.textContent).replace(/[\u202f\u00a0]/g, ""));
    function sift() {
      const words = fold(field.value).split(/\s+/).filter(Boolean);
      let shown = 0;
      units.forEach(function (unit, place) {
        unit.hidden = !words.every((word) => texts[place].includes(word));
        shown += !unit.hidden;
      });
      tell(words.length ? say.shown.replace("{n}", shown).replace("{m}", units.length) : "");
    }
    field.addEventListener("input", sift);
    field.addEventListener("keydown", function (event) {
      if (event.key !== "Escape") return;
      event.preventDefault();
      field.value = "";
      sift();
    });
    if (field.value) sift();
  }

  // One place for the whole page says aloud what was done; a field to sift by has its own, which is seen.
  let spoken = null;

  function aloud(words) {
    if (!spoken) {
      spoken = make("p", "unseen");
      spoken.setAttribute("role", "status");
      document.body.append(spoken);
    }
    spoken.textContent = words;
  }

  document.querySelectorAll("table.sortable").forEach((table) => sorts(table, aloud));
  document.querySelectorAll("input[data-sifts]").forEach(function (field) {
    const caption = document.getElementById(field.dataset.sifts);
    const table = caption && caption.closest("table");
    const status = field.closest(".sift").querySelector("[role=status]");
    if (table) sifts(table, field, (words) => { status.textContent = words; });
  });
})();
