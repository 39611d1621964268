// Finds trips and tows by words, in the data of every season that the page loads as scripts: no requests, so it works from a folder.
// The shape of the data is told where it is made, in logbook/render/find_index.py. Texts of logs only ever become text nodes.
(function () {
  "use strict";

  const place = document.getElementById("find");
  const input = document.getElementById("find-words");
  const status = document.getElementById("find-status");
  const answers = document.getElementById("find-answers");
  const list = document.getElementById("every-trip");
  const say = place.dataset;
  const MONTHS = say.months.split(" "); // as they stand in dates

  const NOBODY = -1;
  const NOT_WEIGHED = -1;
  const NOT_KEPT = -2;
  const NONE = [];
  const FIRST = 12; // answers of a kind at first
  const MORE = 30; // and with every touch of "more"
  const MOST_WORDS = 20; // of a question; each has a bit of its own
  const ANYWHERE = 4; // letters from which a word is found inside others too
  const DAY = 86400000;

  // ---- Words: case and accents folded, with the way back to the letters as typed

  const LETTERS = { "ø": "o", "æ": "ae", "œ": "oe", "ß": "ss", "ð": "d", "þ": "th", "ł": "l", "đ": "d", "ı": "i", "’": "'" };

  const known = new Map();

  function foldLetter(letter) {
    let folded = known.get(letter);
    if (folded === undefined) {
      folded = "";
      for (const part of letter.normalize("NFD").toLowerCase()) {
        folded += LETTERS[part] || (/\p{M}/u.test(part) ? "" : part);
      }
      known.set(letter, folded);
    }
    return folded;
  }

  function fold(text) {
    return /^[\x20-\x7e]*$/.test(text) ? text.toLowerCase() : Array.from(text, foldLetter).join("");
  }

  // Whether the unit of text at a place belongs to a word; folded texts have no capitals.
  function isPartOfWord(text, at) {
    const code = text.charCodeAt(at);
    if (code < 128) return (code > 96 && code < 123) || (code > 47 && code < 58);
    return /[\p{L}\p{N}\p{Cs}]/u.test(text[at]);
  }

  // Where a word stands in a folded text, from a place on: at the beginning of a word, a long one also inside.
  function wordAt(folded, word, from) {
    let at = folded.indexOf(word, from);
    while (at > 0 && word.length < ANYWHERE && isPartOfWord(folded, at - 1)) {
      at = folded.indexOf(word, at + 1);
    }
    return at;
  }

  function wordsOf(text) {
    return fold(text).match(/[\p{L}\p{N}]+/gu) || [];
  }

  const FOLDED_MONTHS = MONTHS.map(fold);
  const BEFORE_TRIP = new Set(wordsOf(say.trip));
  const BEFORE_TOW = new Set(wordsOf(say.tow));
  const SMALL = new Set(wordsOf([say.small, say.praise, say.trip, say.tow].join(" ")));

  // ---- The question: each item is a bit; an answer has all of them

  function monthsOf(word) {
    const found = [];
    FOLDED_MONTHS.forEach(function (name, number) {
      if (name === word || (word.length >= 3 && name.startsWith(word))) found.push(number);
    });
    return found;
  }

  function asked(text) {
    const words = wordsOf(text);
    const items = [];
    for (let at = 0; at < words.length; at += 1) {
      const word = words[at];
      const next = words[at + 1];
      const item = { word: word, months: monthsOf(word), kind: "word" };
      if ((BEFORE_TRIP.has(word) || BEFORE_TOW.has(word)) && next !== undefined && /\d/.test(next)) {
        item.kind = BEFORE_TRIP.has(word) ? "trip" : "tow";
        item.word = next;
        item.months = [];
        at += 1;
      } else if (FOLDED_MONTHS.includes(word)) {
        item.kind = "month";
      } else if (/^(19|20)\d\d$/.test(word)) {
        item.kind = "year";
      } else if (/^\d\d?$/.test(word) && [words[at - 1] || "", next || ""].some((near) => monthsOf(near).length)) {
        item.kind = "day";
      }
      items.push(item);
    }
    const telling = items.filter((item) => item.kind !== "word" || !SMALL.has(item.word));
    return (telling.length ? telling : items).slice(0, MOST_WORDS);
  }

  // ---- The data of a season, laid out so that a hundred thousand tows are gone through between two keys

  const seasons = [];

  // Names of a season, each once, whichever of its trips have them.
  function Names() {
    this.numbers = new Map();
    this.all = [];
  }

  // The number of a name; what stands beside it, such as a code, may tell it from another that is spelled alike.
  Names.prototype.number = function (name, beside) {
    const key = beside ? name + "\n" + beside : name;
    let number = this.numbers.get(key);
    if (number === undefined) {
      number = this.all.length;
      this.numbers.set(key, number);
      this.all.push(beside === undefined ? name : [name, beside]);
    }
    return number;
  };

  function unpack(data) {
    const tows = data.trips.reduce((sum, row) => sum + row[14].length, 0);
    const names = { vessels: new Names(), skippers: new Names(), ports: new Names(), grounds: new Names(), species: new Names(), texts: new Names() };
    const season = {
      name: data.season,
      having: new Map(),
      trips: [],
      time: new Float64Array(tows), month: new Int8Array(tows), date: new Int8Array(tows), year: new Int16Array(tows),
      ground: new Int32Array(tows), minutes: new Int32Array(tows), number: new Int32Array(tows), said: [],
      catches: new Int32Array(tows + 1), // where what a tow caught begins in the two lists below, and at its end where it ends
    };
    const fish = [];
    const kilos = [];
    let at = 0;
    for (const row of data.trips.reverse()) {
      const species = [];
      for (let place = 0; place < row[10].length; place += 2) species.push(names.species.number(row[10][place], row[10][place + 1]));
      const grounds = row[11].map((name) => names.grounds.number(name));
      const texts = row[12].map((text) => names.texts.number(text));
      const trip = {
        season: season, id: row[0], vessel: names.vessels.number(row[1], row[2]), number: row[3],
        skipper: row[4] ? names.skippers.number(row[4]) : NOBODY, port: row[5] ? names.ports.number(row[5]) : NOBODY, began: row[6], ended: row[7],
        kept: row[8], rate: row[9], texts: texts.slice(0, row[13]), first: at, last: at + row[14].length, key: fold(row[3]), months: 0,
      };
      const began = Date.parse(trip.began + "T00:00:00Z");
      const ended = Date.parse(trip.ended + "T00:00:00Z");
      trip.time = began;
      for (let time = began; time <= ended; time += DAY) trip.months |= 1 << new Date(time).getUTCMonth();
      trip.years = [Number(trip.began.slice(0, 4)), Number(trip.ended.slice(0, 4)), Number(data.season)];
      for (const tow of row[14]) {
        const time = tow[0] === NOBODY ? NaN : began + tow[0] * DAY;
        const day = new Date(time);
        let end = 3;
        for (; end < tow.length && !Array.isArray(tow[end]); end += 2) {
          fish.push(species[tow[end]]);
          kilos.push(tow[end + 1]);
        }
        season.time[at] = time;
        season.month[at] = Number.isNaN(time) ? NOBODY : day.getUTCMonth();
        season.date[at] = Number.isNaN(time) ? NOBODY : day.getUTCDate();
        season.year[at] = Number.isNaN(time) ? NOBODY : day.getUTCFullYear();
        season.ground[at] = tow[1] === NOBODY ? NOBODY : grounds[tow[1]];
        season.minutes[at] = tow[2];
        season.catches[at + 1] = fish.length;
        season.said.push(end < tow.length ? tow[end].map((text) => texts[text]) : NONE);
        season.number[at] = end + 1 < tow.length ? tow[end + 1] : at - trip.first + 1;
        at += 1;
      }
      season.trips.push(trip);
    }
    season.fish = Int32Array.from(fish);
    season.kilos = Float64Array.from(kilos);
    for (const [name, table] of Object.entries(names)) season[name] = table.all;
    season.folded = {
      vessels: season.vessels.map((pair) => fold(pair.join(" "))),
      skippers: season.skippers.map(fold), ports: season.ports.map(fold), grounds: season.grounds.map(fold),
      species: season.species.map((pair) => fold(pair[0])), codes: season.species.map((pair) => fold(pair[1])),
      texts: season.texts.map(fold),
    };
    return season;
  }

  // Which items every name of a table answers, as bits.
  function bitsOf(folded, items, kinds) {
    return folded.map(function (name) {
      let bits = 0;
      items.forEach(function (item, number) {
        if (kinds.includes(item.kind) && wordAt(name, item.word, 0) >= 0) bits |= 1 << number;
      });
      return bits;
    });
  }

  function bitsWhere(items, holds) {
    let bits = 0;
    items.forEach(function (item, number) {
      if (holds(item)) bits |= 1 << number;
    });
    return bits;
  }

  // The remarks that have a word; kept, since the next key leaves all words but the last as they are.
  function textsWith(season, word) {
    let having = season.having.get(word);
    if (!having) {
      having = [];
      season.folded.texts.forEach(function (text, number) {
        if (wordAt(text, word, 0) >= 0) having.push(number);
      });
      if (season.having.size > 60) season.having.clear();
      season.having.set(word, having);
    }
    return having;
  }

  function textBits(season, items) {
    const bits = new Int32Array(season.texts.length);
    items.forEach(function (item, place) {
      if (item.kind === "word") for (const number of textsWith(season, item.word)) bits[number] |= 1 << place;
    });
    return bits;
  }

  // A word that may be a month is looked for in names too, one that must be a month is not looked for in remarks.
  function tablesOf(season, items) {
    const names = ["word", "month"];
    const species = bitsOf(season.folded.species, items, names);
    season.folded.codes.forEach(function (code, number) {
      if (code) species[number] |= bitsWhere(items, (item) => item.kind === "word" && item.word === code);
    });
    return {
      vessels: bitsOf(season.folded.vessels, items, names),
      skippers: bitsOf(season.folded.skippers, items, names),
      ports: bitsOf(season.folded.ports, items, names),
      grounds: bitsOf(season.folded.grounds, items, names),
      species: species,
      texts: textBits(season, items),
      months: MONTHS.map((_, month) => bitsWhere(items, (item) => item.months.includes(month))),
    };
  }

  function anyOf(table, numbers) {
    let bits = 0;
    for (const number of numbers) bits |= table[number];
    return bits;
  }

  function named(table, number) {
    return number === NOBODY ? 0 : table[number];
  }

  // ---- The best answers so far, the best first, no more than are shown

  function Best(most) {
    this.most = most;
    this.count = 0;
    this.shown = [];
  }

  Best.prototype.add = function (worth, time, make) {
    this.count += 1;
    const shown = this.shown;
    let at = shown.length;
    while (at > 0 && (shown[at - 1].worth < worth || (shown[at - 1].worth === worth && shown[at - 1].time < time))) at -= 1;
    if (at >= this.most) return;
    const answer = make();
    answer.worth = worth;
    answer.time = time;
    shown.splice(at, 0, answer);
    if (shown.length > this.most) shown.pop();
  };

  // ---- Going through the data

  function search(items, most) {
    const full = (1 << items.length) - 1;
    const tables = seasons.map((season) => tablesOf(season, items));
    const found = { items: items, trips: new Best(most.trips), tows: new Best(most.tows), alive: 0, species: 0, grounds: 0, tables: tables };
    for (const table of tables) {
      for (const bits of table.species) found.species |= bits;
      for (const bits of table.grounds) found.grounds |= bits;
    }
    found.order = found.species ? "most" : found.grounds ? "best" : "latest";
    seasons.forEach((season, number) => searchSeason(season, tables[number], found, full));
    return found;
  }

  function searchSeason(season, table, found, full) {
    const items = found.items;
    const tripNumber = (trip) => bitsWhere(items, (item) => (item.kind === "word" || item.kind === "trip") && trip.key !== "" && trip.key === item.word);
    const towNumbers = items.map((item, number) => [1 << number, item.kind === "tow" ? Number(item.word) : NOBODY]).filter((pair) => pair[1] !== NOBODY);
    const days = items.map((item, number) => [1 << number, item.kind === "day" ? Number(item.word) : NOBODY]).filter((pair) => pair[1] !== NOBODY);
    const years = items.map((item, number) => [1 << number, item.kind === "year" ? Number(item.word) : NOBODY]).filter((pair) => pair[1] !== NOBODY);
    const inYear = (known) => years.reduce((bits, pair) => (known.includes(pair[1]) ? bits | pair[0] : bits), 0);
    const seasonBits = inYear([Number(season.name)]);
    const calendar = table.months.reduce((bits, more) => bits | more, 0);

    for (const trip of season.trips) {
      const base = named(table.vessels, trip.vessel) | named(table.skippers, trip.skipper) | named(table.ports, trip.port) | tripNumber(trip) | seasonBits;
      const own = base | anyOf(table.texts, trip.texts);
      const part = { trip: trip, table: table, count: 0, kg: 0, minutes: 0, ratedKg: 0, first: NaN, last: NaN, weighed: false, whole: own === full };
      found.alive |= own | inYear(trip.years);
      for (let at = trip.first; at < trip.last; at += 1) {
        const mine = towBits(season, table, at, towNumbers);
        let when = season.month[at] === NOBODY ? 0 : table.months[season.month[at]];
        for (const pair of days) if (pair[1] === season.date[at]) when |= pair[0];
        for (const pair of years) if (pair[1] === season.year[at]) when |= pair[0];
        const bits = base | mine | when;
        found.alive |= bits;
        if ((own | bits | found.species) === full) addHours(season, table, at, found, part);
        if ((own | bits) !== full) continue;
        const kg = kilograms(season, table, at, found.species);
        if (!part.whole) addTow(season, at, kg, part);
        if (bits === full && mine) found.tows.add(worthOf(found, kg), season.time[at], () => ({ trip: trip, table: table, tow: at, kg: kg }));
      }
      // A month alone is answered by every trip that was out in it, though it made no tow then.
      const loose = own | inYear(trip.years) | (bitsOfMonths(table, trip) & calendar);
      if (part.whole || (loose === full && !days.length)) {
        if (!part.count) part.whole = true;
      }
      if (part.whole || part.count) {
        const kg = part.whole ? trip.kept : part.weighed ? part.kg : NOT_WEIGHED;
        found.trips.add(found.order === "latest" ? 0 : kg, trip.time, () => part);
      }
    }
  }

  function bitsOfMonths(table, trip) {
    let bits = 0;
    table.months.forEach(function (more, month) {
      if (trip.months & (1 << month)) bits |= more;
    });
    return bits;
  }

  // What a tow itself answers: its ground, its fish, what was said of it, its number.
  function towBits(season, table, at, numbers) {
    let bits = named(table.grounds, season.ground[at]) | anyOf(table.texts, season.said[at]);
    for (let place = season.catches[at]; place < season.catches[at + 1]; place += 1) bits |= table.species[season.fish[place]];
    for (const pair of numbers) if (pair[1] === season.number[at]) bits |= pair[0];
    return bits;
  }

  // Kilograms of the fish that is asked for, of all fish where none is; not weighed, or not kept, where that is all that is known.
  function kilograms(season, table, at, species) {
    let known = NOT_KEPT;
    for (let place = season.catches[at]; place < season.catches[at + 1]; place += 1) {
      if (species && !(table.species[season.fish[place]] & species)) continue;
      const kg = season.kilos[place];
      known = kg >= 0 ? Math.max(known, 0) + kg : Math.max(known, kg);
    }
    return known;
  }

  function worthOf(found, kg) {
    return found.order === "latest" ? 0 : kg;
  }

  // The hours towed where and when it was asked for, with that fish or without, so that a rate is not made of good tows alone.
  function addHours(season, table, at, found, part) {
    if (!season.minutes[at]) return;
    const kg = kilograms(season, table, at, found.species);
    part.minutes += season.minutes[at];
    part.ratedKg += Math.max(kg, 0);
  }

  function addTow(season, at, kg, part) {
    part.count += 1;
    if (kg >= 0) {
      part.kg += kg;
      part.weighed = true;
    }
    const time = season.time[at];
    if (!(part.first <= time)) part.first = time;
    if (!(part.last >= time)) part.last = time;
  }

  // ---- Showing: made of text nodes and marks

  function make(name, className, text) {
    const made = document.createElement(name);
    if (className) made.className = className;
    if (text !== undefined) made.textContent = text;
    return made;
  }

  function filled(text, values) {
    return text.replace(/\{(\w+)\}/g, (_, name) => values[name]);
  }

  // The same where what is put in has marks of its own: each name has what puts it.
  function putFilled(parent, text, puts) {
    for (const piece of text.split(/(\{\w+\})/)) {
      if (/^\{\w+\}$/.test(piece)) puts[piece.slice(1, -1)]();
      else parent.append(piece);
    }
  }

  // What is said of a number, in the form that its language has for it: they stand in the page with strokes between, and so does
  // which form each number takes, where it is not the first for one and the second for all others.
  function formOf(forms, count) {
    const form = say.plural ? Number(say.plural[count < say.plural.length ? count : 100 + (count % 100)]) : Number(count !== 1);
    return forms.split("|")[form];
  }

  function many(count, forms) {
    return number(count) + " " + formOf(forms, count);
  }

  // Puts a text in, with the words that it was found by marked.
  function put(parent, text, words) {
    const starts = [];
    let folded = "";
    let at = 0;
    for (const letter of text) {
      const more = foldLetter(letter);
      for (let count = 0; count < more.length; count += 1) starts.push(at);
      folded += more;
      at += letter.length;
    }
    starts.push(text.length);
    const marked = new Uint8Array(text.length + 1);
    for (const word of words) {
      for (let from = wordAt(folded, word, 0); from >= 0; from = wordAt(folded, word, from + 1)) {
        let end = starts[from + word.length];
        if (end === starts[from + word.length - 1]) end += 1;
        marked.fill(1, starts[from], end);
      }
    }
    for (let from = 0; from < text.length; ) {
      let to = from + 1;
      while (to < text.length && marked[to] === marked[from]) to += 1;
      const piece = text.slice(from, to);
      parent.append(marked[from] ? make("mark", "", piece) : piece);
      from = to;
    }
  }

  function wordsIn(items, kinds) {
    return items.filter((item) => kinds.includes(item.kind)).map((item) => item.word);
  }

  const NAMES = ["word", "month"];

  function number(value) {
    return Math.round(value).toString().replace(/\B(?=(\d{3})+$)/g, "\u202f");
  }

  function putDate(parent, time, items, withoutYear) {
    putFilled(parent, withoutYear ? say.day : say.date, putsOfDate(parent, time, items));
  }

  function putsOfDate(parent, time, items) {
    const day = new Date(time);
    const date = day.getUTCDate();
    const month = day.getUTCMonth();
    const asks = items.some((item) => item.kind === "day" && Number(item.word) === date);
    return {
      day: () => put(parent, String(date), asks ? [String(date)] : []),
      month: () => put(parent, MONTHS[month], items.filter((item) => item.months.includes(month)).map((item) => item.word)),
      year: () => put(parent, String(day.getUTCFullYear()), wordsIn(items, ["year"])),
    };
  }

  // `4 – 10 March 2026`: what both days share is said once.
  function putDays(parent, first, last, items) {
    const [from, to] = [new Date(first), new Date(last)];
    const sameYear = from.getUTCFullYear() === to.getUTCFullYear();
    if (!sameYear || from.getUTCMonth() !== to.getUTCMonth()) {
      putFilled(parent, say.span, { first: () => putDate(parent, first, items, sameYear), last: () => putDate(parent, last, items) });
    } else if (from.getUTCDate() !== to.getUTCDate()) {
      const puts = putsOfDate(parent, last, items);
      putFilled(parent, say.days, { first: () => parent.append(String(from.getUTCDate())), last: puts.day, month: puts.month, year: puts.year });
    } else {
      putDate(parent, last, items);
    }
  }

  function putTitle(link, trip, items) {
    const name = make("bdi");
    put(name, trip.season.vessels[trip.vessel][0], wordsIn(items, NAMES));
    const exact = items.some((item) => (item.kind === "word" || item.kind === "trip") && item.word === trip.key);
    putFilled(link, trip.number ? say.tripTitle : "{vessel}", {
      vessel: () => link.append(name),
      number: () => put(link, trip.number, exact ? [trip.key] : []),
    });
  }

  // Names that are told only where they are why this was found.
  function putWhy(parent, answer, items) {
    const trip = answer.trip;
    const season = trip.season;
    const words = wordsIn(items, NAMES);
    const registration = season.vessels[trip.vessel][1];
    const told = [];
    if (words.some((word) => wordAt(fold(registration), word, 0) >= 0)) told.push(registration);
    if (named(answer.table.skippers, trip.skipper)) told.push(season.skippers[trip.skipper]);
    if (named(answer.table.ports, trip.port)) told.push(season.ports[trip.port]);
    for (const name of told) {
      parent.append(" · ");
      const bdi = make("bdi");
      put(bdi, name, words);
      parent.append(bdi);
    }
    if (items.some((item) => item.kind === "year" && item.word === season.name) && season.name !== trip.began.slice(0, 4)) {
      parent.append(" · ");
      putFilled(parent, say.season, { name: () => put(parent, season.name, [season.name]) });
    }
  }

  // What was said, where it is why this was found: not where it only names the fish that is asked for.
  function putSaid(parent, answer, texts, found) {
    const words = wordsIn(found.items, ["word"]);
    const season = answer.trip.season;
    const telling = texts.filter((text) => answer.table.texts[text] & ~found.species);
    for (const text of telling.slice(0, 2)) {
      const line = make("q", "said");
      put(line, around(season.texts[text], words), words);
      parent.append(line);
    }
  }

  // The part of a long text around the first word that was asked for.
  function around(text, words) {
    const before = 70;
    const most = 220;
    if (text.length <= most) return text;
    const folded = fold(text);
    const places = words.map((word) => wordAt(folded, word, 0)).filter((at) => at >= 0);
    let from = Math.max(0, Math.min.apply(null, places) - before);
    if (from > 0) from = text.indexOf(" ", from) + 1;
    const to = from + most;
    return (from > 0 ? "… " : "") + text.slice(from, to).trim() + (to < text.length ? " …" : "");
  }

  function putGrounds(parent, answer, numbers, items) {
    numbers.slice(0, 3).forEach(function (ground) {
      parent.append(" · ");
      const bdi = make("bdi");
      put(bdi, answer.trip.season.grounds[ground], wordsIn(items, NAMES));
      parent.append(bdi);
    });
  }

  function speciesOf(answer, numbers, items) {
    const season = answer.trip.season;
    const bdi = make("bdi");
    numbers.forEach(function (species, place) {
      if (place) bdi.append(", ");
      const words = wordsIn(items, NAMES);
      put(bdi, season.species[species][0], words);
      const code = season.folded.codes[species];
      if (code && words.includes(code) && wordAt(season.folded.species[species], code, 0) < 0) {
        bdi.append(" ");
        put(bdi, season.species[species][1], [code]);
      }
    });
    return bdi;
  }

  // The species asked for that a tow, or some tows, caught.
  function askedSpecies(answer, tows, species) {
    const season = answer.trip.season;
    const found = new Set();
    for (const at of tows) {
      for (let place = season.catches[at]; place < season.catches[at + 1]; place += 1) {
        if (answer.table.species[season.fish[place]] & species) found.add(season.fish[place]);
      }
    }
    return Array.from(found);
  }

  function figure(kg, rate, species) {
    const made = make("p", "haul");
    if (kg >= 0) {
      made.append(make("b", "", number(kg) + "\u202fkg"), " ");
      made.append(species || say.kept);
      if (rate !== null) made.append(make("span", "rate", number(rate) + "\u202f" + say.rate));
    } else {
      if (species) made.append(species, " ");
      made.append(make("span", "rate", kg === NOT_KEPT && species ? say.back : species ? say.unweighed : say.unknown));
    }
    return made;
  }

  function tripAnswer(answer, found) {
    const items = found.items;
    const trip = answer.trip;
    const item = make("li");
    const link = make("a");
    link.href = "trips/" + encodeURIComponent(trip.id) + ".html";
    putTitle(link, trip, items);
    const line = make("p", "where");
    const all = trip.last - trip.first;
    const tows = answer.whole ? [] : matching(answer, found);
    if (answer.whole) {
      putDays(line, trip.time, Date.parse(trip.ended + "T00:00:00Z"), items);
    } else {
      line.append(tows.length === all ? many(all, say.tows) : filled(formOf(say.of, all), { n: number(tows.length), m: number(all) }));
      if (!Number.isNaN(answer.last)) {
        line.append(", ");
        putDays(line, answer.first, answer.last, items);
      }
      putGrounds(line, answer, Array.from(new Set(tows.map((at) => trip.season.ground[at]))).filter((ground) => ground !== NOBODY && answer.table.grounds[ground]), items);
    }
    putWhy(line, answer, items);
    const whole = answer.whole;
    const species = whole ? [] : askedSpecies(answer, tows, found.species);
    const kg = whole ? trip.kept : answer.weighed ? answer.kg : NOT_WEIGHED;
    const rate = whole ? (trip.rate >= 0 ? trip.rate : null) : answer.minutes ? (answer.ratedKg * 60) / answer.minutes : null;
    item.append(link, figure(kg, rate, species.length ? speciesOf(answer, species, items) : null), line);
    const texts = trip.texts.concat(...tows.map((at) => trip.season.said[at]));
    putSaid(item, answer, Array.from(new Set(texts)), found);
    return item;
  }

  // The tows of a trip that it was found by.
  function matching(answer, found) {
    const trip = answer.trip;
    const season = trip.season;
    const full = (1 << found.items.length) - 1;
    const base = named(answer.table.vessels, trip.vessel) | named(answer.table.skippers, trip.skipper) | named(answer.table.ports, trip.port) | anyOf(answer.table.texts, trip.texts);
    const tows = [];
    for (let at = trip.first; at < trip.last; at += 1) {
      const bits = bitsWhere(found.items, function (item) {
        if (item.kind === "year") return item.word === season.name || Number(item.word) === season.year[at];
        if (item.kind === "day") return Number(item.word) === season.date[at];
        if (item.kind === "tow") return Number(item.word) === season.number[at];
        return (item.kind === "trip" || item.kind === "word") && trip.key !== "" && trip.key === item.word;
      });
      const month = season.month[at] === NOBODY ? 0 : answer.table.months[season.month[at]];
      if ((base | bits | month | towBits(season, answer.table, at, [])) === full) tows.push(at);
    }
    return tows;
  }

  function towAnswer(answer, found) {
    const items = found.items;
    const trip = answer.trip;
    const season = trip.season;
    const at = answer.tow;
    const item = make("li");
    const link = make("a");
    link.href = "trips/" + encodeURIComponent(trip.id) + ".html#tow-" + (at - trip.first + 1);
    const towNumber = String(season.number[at]);
    const exact = items.some((one) => one.kind === "tow" && Number(one.word) === season.number[at]);
    putFilled(link, say.towTitle, { trip: () => putTitle(link, trip, items), number: () => put(link, towNumber, exact ? [towNumber] : []) });
    const line = make("p", "where");
    if (!Number.isNaN(season.time[at])) putDate(line, season.time[at], items);
    if (season.ground[at] !== NOBODY) putGrounds(line, answer, [season.ground[at]], items);
    putWhy(line, answer, items);
    const species = askedSpecies(answer, [at], found.species);
    const kg = species.length ? answer.kg : kilograms(season, answer.table, at, 0);
    const rate = season.minutes[at] && kg >= 0 ? (kg * 60) / season.minutes[at] : null;
    item.append(link, figure(kg, rate, species.length ? speciesOf(answer, species, items) : null), line);
    putSaid(item, answer, season.said[at], found);
    return item;
  }

  // ---- The page

  const sections = { trips: document.getElementById("found-trips").parentNode, tows: document.getElementById("found-tows").parentNode };
  let most = { trips: FIRST, tows: FIRST };
  let lost = [];
  let waiting = say.files ? say.files.split(" ") : [];

  function orderWords(found) {
    if (found.order !== "most") return found.order === "best" ? say.best : say.latest;
    const names = new Set();
    found.tables.forEach(function (table, number) {
      table.species.forEach(function (bits, species) {
        if (bits) names.add(seasons[number].species[species][0]);
      });
    });
    return filled(say.most, { name: Array.from(names).slice(0, 3).join(", ") });
  }

  function showKind(kind, found, build) {
    const section = sections[kind];
    const best = found[kind];
    section.hidden = best.count === 0;
    section.querySelector("h2 .unit").textContent = best.count > 1 ? orderWords(found) : "";
    section.querySelector("ol").replaceChildren(...best.shown.map((answer) => build(answer, found)));
    const more = section.querySelector("button");
    more.hidden = best.count <= best.shown.length;
    more.textContent = filled(say.more, { n: number(Math.min(MORE, best.count - best.shown.length)) });
  }

  function counted(trips, tows) {
    const all = seasons.reduce((sum, season) => [sum[0] + season.trips.length, sum[1] + season.time.length], [0, 0]);
    if (trips === null) return filled(say.all, { trips: many(all[0], say.trips), tows: many(all[1], say.tows) });
    const parts = [];
    if (trips) parts.push(many(trips, say.trips));
    if (tows) parts.push(many(tows, say.tows));
    return parts.join(", ");
  }

  function show() {
    let items = asked(input.value);
    const words = [];
    let found = null;
    let left = [];
    if (items.length && seasons.length) {
      found = search(items, most);
      left = items.filter((_, place) => !(found.alive & (1 << place)));
      if (left.length && left.length < items.length && !waiting.length) {
        items = items.filter((item) => !left.includes(item));
        found = search(items, most);
      } else {
        left = [];
      }
    }
    const any = found !== null && found.trips.count + found.tows.count > 0;
    list.hidden = found !== null;
    answers.hidden = !any;
    if (any) {
      showKind("trips", found, tripAnswer);
      showKind("tows", found, towAnswer);
      words.push(counted(found.trips.count, found.tows.count));
    } else {
      words.push(found ? (waiting.length ? "" : say.nothing) : seasons.length ? counted(null) : "");
    }
    for (const item of left) words.push(filled(say.without, { name: item.word }));
    if (waiting.length) words.push(filled(say.loading, { name: seasonOf(waiting[0]) }));
    for (const file of lost) words.push(filled(say.missing, { name: seasonOf(file) }));
    status.textContent = words.filter(Boolean).join(". ");
    press();
  }

  function seasonOf(file) {
    return file.replace(/^.*\//, "").replace(/\..*$/, "");
  }

  // Finds a few things once, so that the first keys do not wait for the browser to learn how.
  function learn() {
    for (const words of [say.trip + " 1 " + MONTHS[0], MONTHS[2].slice(0, 1), MONTHS[2].slice(0, 2), MONTHS[0] + " " + MONTHS[2]]) search(asked(words), most);
  }

  // The data is loaded as scripts, one after another, the latest season first: a page opened from a folder may not fetch.
  function load() {
    if (!waiting.length) {
      show();
      return;
    }
    const file = waiting[0];
    const script = document.createElement("script");
    script.src = file;
    const done = function (came) {
      const given = (window.logbookSeasons || []).splice(0);
      if (came && given.length) given.forEach((data) => seasons.push(unpack(data)));
      else lost.push(file);
      waiting = waiting.slice(1);
      script.remove();
      show();
      if (waiting.length) load();
      else learn();
    };
    script.addEventListener("load", () => done(true));
    script.addEventListener("error", () => done(false));
    document.head.append(script);
  }

  // ---- Typing, touching, walking

  let keeping = 0;

  // The address keeps the words, so that the way back from an answer leads to them; not at every key, which browsers refuse.
  function keep() {
    window.clearTimeout(keeping);
    keeping = window.setTimeout(write, 400);
  }

  function write() {
    window.clearTimeout(keeping);
    const words = input.value.trim();
    const address = words ? "#q=" + encodeURIComponent(words) : window.location.pathname.replace(/^.*\//, "");
    window.history.replaceState(null, "", address);
  }

  function changed() {
    most = { trips: FIRST, tows: FIRST };
    show();
    keep();
  }

  const buttons = Array.from(place.querySelectorAll(".chips button"));

  // A button is pressed where its words are among those that are typed.
  function press() {
    const words = new Set(wordsOf(input.value));
    for (const button of buttons) {
      button.setAttribute("aria-pressed", String(wordsOf(button.textContent).every((word) => words.has(word))));
    }
  }

  function choose(button) {
    const was = button.getAttribute("aria-pressed") === "true";
    const group = Array.from(button.closest(".chips").querySelectorAll('[aria-pressed="true"]'));
    const gone = new Set(group.concat(was ? [button] : []).flatMap((other) => wordsOf(other.textContent)));
    const kept = input.value.split(/\s+/).filter((word) => word && !wordsOf(word).every((part) => gone.has(part)));
    input.value = kept.concat(was ? [] : [button.textContent]).join(" ");
    changed();
  }

  function links() {
    return answers.hidden ? [] : Array.from(answers.querySelectorAll("li a"));
  }

  function begin() {
    input.value = "";
    changed();
    input.focus();
  }

  function walk(event) {
    if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || event.isComposing) return;
    const every = links();
    const at = every.indexOf(document.activeElement);
    const typing = document.activeElement === input;
    if (!typing && at < 0 && !(event.key === "Escape" && place.contains(document.activeElement))) return;
    let to = null;
    if (event.key === "ArrowDown") to = every[at + 1];
    else if (event.key === "ArrowUp" && at >= 0) to = at ? every[at - 1] : input;
    else if (event.key === "Home" && at >= 0) to = every[0];
    else if (event.key === "End" && at >= 0) to = every[every.length - 1];
    else if (event.key === "Escape") {
      event.preventDefault();
      if (typing || at < 0) begin();
      else input.focus();
      return;
    } else if (event.key === "Enter" && typing && every.length) {
      event.preventDefault();
      write();
      every[0].click();
      return;
    }
    if (!to) return;
    event.preventDefault();
    to.focus();
  }

  function fromAddress() {
    const found = /^#q=(.*)$/.exec(window.location.hash);
    if (!found) return;
    try {
      input.value = decodeURIComponent(found[1]);
    } catch (broken) {
      input.value = "";
    }
  }

  input.addEventListener("input", changed);
  buttons.forEach((button) => button.addEventListener("click", () => choose(button)));
  Object.keys(sections).forEach(function (kind) {
    sections[kind].querySelector("button").addEventListener("click", function () {
      const shown = sections[kind].querySelectorAll("li").length;
      most[kind] += MORE;
      show();
      const next = sections[kind].querySelectorAll("li a")[shown];
      if (next) next.focus();
    });
  });
  document.addEventListener("keydown", walk);
  answers.addEventListener("click", write);
  window.addEventListener("hashchange", function () {
    fromAddress();
    show();
  });
  fromAddress();
  if (window.location.hash === "#find-words" || window.matchMedia("(hover: hover) and (pointer: fine)").matches) input.focus({ preventScroll: true });
  load();
})();
