// The key "/" leads to the page "find" from every page. It can be switched off there (WCAG 2.2, 2.1.4 Character Key Shortcuts).
(function () {
  "use strict";

  var NAME = "logbook-slash-key";
  var find = document.currentScript.dataset.find;
  var box = document.getElementById("slash-key");

  // A browser may refuse storage to pages opened from a folder; the key then works, and the choice lasts as long as the page.
  function stored() {
    try {
      return window.localStorage.getItem(NAME);
    } catch (refused) {
      return null;
    }
  }

  function isTyping(element) {
    return element.isContentEditable || /^(input|select|textarea)$/i.test(element.tagName);
  }

  var wanted = stored() !== "off";
  if (box) {
    box.checked = wanted;
    box.addEventListener("change", function () {
      wanted = box.checked;
      try {
        window.localStorage.setItem(NAME, wanted ? "on" : "off");
      } catch (refused) {
        return;
      }
    });
  }

  document.addEventListener("keydown", function (event) {
    if (event.key !== "/" || !wanted || event.ctrlKey || event.altKey || event.metaKey || isTyping(event.target)) {
      return;
    }
    event.preventDefault();
    var words = document.getElementById("find-words");
    if (words) {
      words.focus();
      words.select();
    } else {
      window.location.href = find;
    }
  });
})();
