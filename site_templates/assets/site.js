/* Script only improves: without it every page and every link works. Nothing is sent anywhere. */
(function () {
  "use strict";
  var make = function (name, attributes, text) {
    var element = document.createElement(name);
    Object.keys(attributes || {}).forEach(function (key) { element.setAttribute(key, attributes[key]); });
    if (text !== undefined) { element.textContent = text; }
    return element;
  };
  var natural = new Intl.Collator("en", { numeric: true, sensitivity: "base" });
  var shown = function (cell) {
    var copy = cell.cloneNode(true);
    copy.querySelectorAll("[aria-hidden], button:not(.sorts), select").forEach(function (part) { part.remove(); });
    return copy.textContent.replace(/\s+/g, " ").trim();
  };
  var asNumber = function (text) {
    var found = /^[−-]?[\d,]*\.?\d+/.exec(text.replace(/[<\u202f]/g, ""));
    return found ? parseFloat(found[0].replace(/,/g, "").replace("−", "-")) : NaN;
  };
  var fileName = function (text) {
    return text.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 60) || "table";
  };
  var give = function (blob, name) {
    var link = make("a", { href: URL.createObjectURL(blob), download: name });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 4000);
  };

  /* Tables: order by a column, keep what is chosen, take away as CSV. */
  var sortable = function (table) {
    Array.from(table.tHead.rows[0].cells).forEach(function (head, column) {
      var words = make("button", { type: "button", class: "sorts" });
      var link = head.querySelector("a");
      words.textContent = link ? link.textContent : head.textContent;
      if (link) { words.title = head.textContent; }
      head.replaceChildren(words);
      words.addEventListener("click", function () {
        var up = head.getAttribute("aria-sort") !== "ascending";
        Array.from(table.tHead.rows[0].cells).forEach(function (other) { other.removeAttribute("aria-sort"); });
        head.setAttribute("aria-sort", up ? "ascending" : "descending");
        var keyed = Array.from(table.tBodies[0].rows).map(function (row) {
          return { row: row, key: shown(row.cells[column]) };
        });
        var isNumber = head.classList.contains("n");
        keyed.sort(function (one, other) {
          if (isNumber) {
            var a = asNumber(one.key), b = asNumber(other.key);
            if (isNaN(a) || isNaN(b)) { return (isNaN(a) ? 1 : 0) - (isNaN(b) ? 1 : 0); }
            return up ? a - b : b - a;
          }
          return up ? natural.compare(one.key, other.key) : natural.compare(other.key, one.key);
        });
        table.tBodies[0].append.apply(table.tBodies[0], keyed.map(function (one) { return one.row; }));
      });
    });
  };
  var filtered = function (table) {
    var bar = make("p", { class: "asked chosen grid" });
    var told = make("span", { role: "status", class: "small" });
    var chosen = [];
    Array.from(table.tHead.rows[0].cells).forEach(function (head, column) {
      if (!head.hasAttribute("data-filter")) { return; }
      var values = Array.from(new Set(Array.from(table.tBodies[0].rows, function (row) { return shown(row.cells[column]); })));
      var choose = make("select");
      choose.append(make("option", { value: "" }, "any"));
      values.sort(natural.compare).forEach(function (value) { choose.append(make("option", { value: value }, value)); });
      var label = make("label", {}, head.textContent.trim() + " ");
      label.append(choose);
      bar.append(label);
      chosen.push([column, choose]);
    });
    var words = make("input", { type: "search", autocomplete: "off" });
    var named = make("label", {}, "Words ");
    named.append(words);
    bar.append(named, told);
    var apply = function () {
      var asked = words.value.toLowerCase().trim(), left = 0;
      Array.from(table.tBodies[0].rows).forEach(function (row) {
        var fits = chosen.every(function (one) { return !one[1].value || shown(row.cells[one[0]]) === one[1].value; });
        row.hidden = !(fits && (!asked || row.textContent.toLowerCase().indexOf(asked) >= 0));
        left += row.hidden ? 0 : 1;
      });
      told.textContent = left + " of " + table.tBodies[0].rows.length + " shown";
    };
    bar.addEventListener("input", apply);
    (table.closest(".scroll") || table).before(bar);
  };
  var csvOf = function (table) {
    return Array.from(table.rows).map(function (row) {
      return Array.from(row.cells).map(function (cell) {
        var text = shown(cell);
        return /[",\n]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text;
      }).join(",");
    }).join("\n") + "\n";
  };
  var takeable = function (table) {
    if (table.querySelector("[rowspan]") || !table.caption) { return; }
    var button = make("button", { type: "button", class: "take" }, "CSV");
    button.setAttribute("aria-label", "Take this table as CSV: " + table.caption.textContent);
    button.addEventListener("click", function () {
      give(new Blob(["\ufeff" + csvOf(table)], { type: "text/csv" }), fileName(table.caption.textContent) + ".csv");
    });
    (table.closest(".scroll") || table).after(button);
  };

  /* Figures: the picture as SVG with its colours written out, or as PNG. */
  var PAINT = ["fill", "stroke", "stroke-width", "stroke-dasharray", "font-size", "font-weight", "font-style", "font-family", "text-anchor", "opacity"];
  var standing = function (svg) {
    var copy = svg.cloneNode(true), box = svg.viewBox.baseVal;
    var from = svg.querySelectorAll("*"), to = copy.querySelectorAll("*");
    for (var index = 0; index < from.length; index += 1) {
      var style = getComputedStyle(from[index]);
      to[index].setAttribute("style", PAINT.map(function (name) { return name + ":" + style.getPropertyValue(name); }).join(";"));
      ["class", "fill", "stroke"].forEach(function (name) { to[index].removeAttribute(name); });
    }
    var ground = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    ground.setAttribute("width", "100%");
    ground.setAttribute("height", "100%");
    ground.setAttribute("fill", getComputedStyle(svg.parentElement).backgroundColor);
    copy.insertBefore(ground, copy.firstChild);
    copy.setAttribute("width", box.width);
    copy.setAttribute("height", box.height);
    return new XMLSerializer().serializeToString(copy);
  };
  var asPng = function (svg, name) {
    var picture = new Image(), box = svg.viewBox.baseVal;
    picture.onload = function () {
      var canvas = make("canvas", { width: box.width * 3, height: box.height * 3 });
      canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
      canvas.toBlob(function (blob) { give(blob, name); }, "image/png");
    };
    picture.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(standing(svg));
  };
  var figure = function (holder) {
    var svg = holder.querySelector("svg"), says = holder.querySelector("figcaption").textContent;
    var bar = holder.querySelector(".takes") || make("p", { class: "takes" });
    var isThere = Boolean(bar.parentElement);
    [["SVG", function () { give(new Blob([standing(svg)], { type: "image/svg+xml" }), fileName(says) + ".svg"); }],
     ["PNG", function () { asPng(svg, fileName(says) + ".png"); }]].forEach(function (one) {
      var link = isThere && bar.querySelector("a[href$='." + one[0].toLowerCase() + "']");
      if (link) {
        /* A browser opens a file of the disk where it should take it away. */
        link.addEventListener("click", function (event) { event.preventDefault(); one[1](); });
        return;
      }
      var button = make("button", { type: "button", class: "take", "aria-label": "Take this figure as " + one[0] + ": " + says }, one[0]);
      button.addEventListener("click", one[1]);
      bar.insertBefore(button, bar.querySelector("a[href$='.csv']"));
    });
    if (!isThere) { holder.querySelector(".scroll").after(bar); }
  };

  /* Search: the index lies in script files beside the page, so that it works from a disk too. */
  var FIELDS = ["what", "phase", "kind", "question", "grade"], PLACE = { what: 0, phase: 4, kind: 5, question: 6, grade: 7 };
  var search = function (holder) {
    var all = [], wanted = Number(holder.dataset.parts), asked = false, most = 40;
    var words = document.getElementById("words"), list = document.getElementById("found");
    var told = document.getElementById("told"), more = document.getElementById("more");
    var chosen = {};
    FIELDS.forEach(function (name) { chosen[name] = document.getElementById("of-" + name); });
    var offer = function () {
      FIELDS.forEach(function (name) {
        var known = new Set(Array.from(chosen[name].options, function (option) { return option.value; }));
        var values = new Set(all.map(function (entry) { return entry[PLACE[name]]; }));
        Array.from(values).filter(function (value) { return value && !known.has(value); }).sort(natural.compare)
          .forEach(function (value) { chosen[name].append(make("option", { value: value }, value)); });
      });
    };
    var put = function () {
      var terms = words.value.toLowerCase().split(/\s+/).filter(Boolean);
      var isAsked = terms.length || FIELDS.some(function (name) { return chosen[name].value; });
      var found = !isAsked ? [] : all.filter(function (entry) {
        return FIELDS.every(function (name) { return !chosen[name].value || entry[PLACE[name]] === chosen[name].value; }) &&
          terms.every(function (term) { return entry[8].indexOf(term) >= 0; });
      });
      list.replaceChildren.apply(list, found.slice(0, most).map(function (entry) {
        var item = make("li"), rest = [entry[4], entry[6], entry[7]].filter(Boolean).join(" · ");
        item.append(make("span", { class: "word" }, entry[0]), " ", make("a", { href: entry[2] }, entry[1]));
        if (entry[3] || rest) { item.append(make("p", { class: "small" }, entry[3] || rest)); }
        return item;
      }));
      more.hidden = found.length <= most;
      told.textContent = (isAsked ? found.length + " found" : all.length + " entries") +
        (next <= wanted ? "; still reading the index" : "");
    };
    var next = 1;
    var read = function () {
      if (next > wanted) { put(); return; }
      document.head.append(make("script", { src: holder.dataset.from.replace("part-1", "part-" + next) }));
    };
    window.narrateFound = function (number, entries) {
      entries.forEach(function (entry) { entry.push([entry[1], entry[3], entry[4], entry[5], entry[7]].join(" ").toLowerCase()); all.push(entry); });
      next = number + 1;
      offer();
      put();
      read();
    };
    var begin = function () { if (!asked) { asked = true; read(); } };
    var again = function () {
      most = 40;
      begin();
      put();
      var kept = new URLSearchParams();
      if (words.value) { kept.set("q", words.value); }
      FIELDS.forEach(function (name) { if (chosen[name].value) { kept.set(name, chosen[name].value); } });
      history.replaceState(null, "", kept.toString() ? "#" + kept.toString() : location.pathname.split("/").pop());
    };
    document.querySelectorAll(".tried").forEach(function (one) {
      one.addEventListener("click", function () { words.value = one.textContent; again(); words.focus(); });
    });
    more.addEventListener("click", function () { most += 200; put(); });
    holder.addEventListener("input", again);
    document.getElementById("unscripted").hidden = true;
    holder.hidden = false;
    var recall = function () {
      var before = new URLSearchParams(location.hash.slice(1));
      words.value = before.get("q") || "";
      FIELDS.forEach(function (name) {
        var value = before.get(name) || "";
        var isThere = Array.from(chosen[name].options).some(function (option) { return option.value === value; });
        if (!isThere) { chosen[name].append(make("option", { value: value }, value)); }
        chosen[name].value = value;
      });
    };
    recall();
    begin();
    window.addEventListener("hashchange", function () { recall(); most = 40; put(); });
    if (!location.hash) { words.focus({ preventScroll: true }); }
  };

  /* What an address names is opened, also where the browser does not do so by itself. */
  var open = function () {
    var named = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    for (var within = named && named.closest("details"); within; within = within.parentElement.closest("details")) {
      if (!within.open) { within.open = true; named.scrollIntoView(); }
    }
  };
  /* Where many samples are named again and again, the page links each once; here every mention becomes a link. */
  var samples = document.getElementById("row-samples");
  if (samples) {
    var lies = {};
    samples.querySelectorAll("a").forEach(function (link) { lies[link.textContent] = link.getAttribute("href"); });
    document.querySelectorAll(".row-sets > li").forEach(function (item) {
      var told = item.lastChild, pieces = told.nodeType === 3 ? told.textContent.replace(/^:\s*/, "").split("; ") : [];
      if (pieces.length) { told.textContent = ": "; }
      pieces.forEach(function (piece, number) {
        var words = piece.split(" "), named = words.map(function (_, at) { return words.slice(0, at + 1).join(" "); })
          .find(function (text) { return lies[text]; });
        var rest = named === undefined ? piece : piece.slice(named.length), row = /\d+/.exec(rest);
        if (number) { item.append("; "); }
        if (named !== undefined) { item.append(make("a", { href: lies[named] + (row ? "#row-" + row[0] : "") }, named)); }
        item.append(rest);
      });
    });
  }
  window.addEventListener("hashchange", open);
  if (!document.getElementById("search")) { open(); }

  document.querySelectorAll("table.filtered").forEach(filtered);
  document.querySelectorAll("table.sortable").forEach(sortable);
  document.querySelectorAll("main table").forEach(takeable);
  document.querySelectorAll("figure.chart").forEach(figure);

  /* On paper nothing can be opened or pressed: claims are printed with all that they hold, and heads of columns as
     words, because a browser does not repeat a head with buttons in it on the next sheet. */
  var opened = [], pressed = [];
  window.addEventListener("beforeprint", function () {
    pressed = Array.from(document.querySelectorAll(".sorts"), function (button) {
      var words = make("span", {}, button.textContent);
      button.replaceWith(words);
      return [words, button];
    });
    opened = Array.from(document.querySelectorAll("details:not([open])")).filter(function (one) { return !one.closest(".chart, .evidence"); });
    opened.forEach(function (one) { one.open = true; });
  });
  window.addEventListener("afterprint", function () {
    opened.forEach(function (one) { one.open = false; });
    pressed.forEach(function (one) { one[0].replaceWith(one[1]); });
    opened = []; pressed = [];
  });

  /* What is wider than the screen says so, for a bar to scroll by is not always seen. */
  document.querySelectorAll(".scroll").forEach(function (box) {
    if (box.scrollWidth > box.clientWidth + 4 && getComputedStyle(box).overflowX !== "hidden" && !box.closest("details:not([open])")) { box.before(make("p", { class: "sideways" }, "There is more to the right: scroll it.")); }
  });
  var holder = document.getElementById("search");
  if (holder) { search(holder); }
  document.addEventListener("keydown", function (event) {
    var typing = /^(INPUT|SELECT|TEXTAREA)$/.test(event.target.tagName);
    var way = document.querySelector('nav a[href$="search.html"]');
    if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && way) {
      event.preventDefault();
      if (holder) { document.getElementById("words").focus(); } else { way.click(); }
    }
  });
}());
