// Says of an expected time that has passed that it has. Without it the board stays as of the last word; nothing else is told by it.
// A time is told apart by its data-late, which holds the words.
(function () {
  "use strict";

  const HALF_A_MINUTE = 30000;

  function mark() {
    const now = Date.now();
    document.querySelectorAll("time[data-late]").forEach((time) => {
      const late = Date.parse(time.dateTime) < now;
      const said = time.nextElementSibling;
      const marked = said !== null && said.classList.contains("late");
      if (late && !marked) {
        const words = document.createElement("strong");
        words.className = "late";
        words.textContent = time.dataset.late;
        time.after(words);
      } else if (!late && marked) {
        said.remove();
      }
    });
  }

  mark();
  window.setInterval(mark, HALF_A_MINUTE);
})();
