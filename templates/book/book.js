"use strict";
(function () {
  const $ = (id) => document.getElementById(id);
  const all = (q, from) => Array.from((from || document).querySelectorAll(q));
  const key = "shoot-book:" + document.body.dataset.title;

  // ---- what is remembered ----
  let keeps = true;
  let memory = { ticks: {}, version: "", looks: "" };
  function recall() {
    let found = null;
    try {
      localStorage.setItem(key + ":try", "1");
      localStorage.removeItem(key + ":try");
      found = localStorage.getItem(key);
    } catch (_) { keeps = false; }
    try { found = JSON.parse(found); } catch (_) { found = null; }
    if (found && typeof found === "object") {
      memory = { ticks: Object(found.ticks), version: String(found.version || ""), looks: String(found.looks || "") };
    }
    $("memory").hidden = keeps;
  }
  function remember() {
    if (!keeps) return;
    try { localStorage.setItem(key, JSON.stringify(memory)); } catch (_) { keeps = false; $("memory").hidden = false; }
  }
  function tell(words) { $("status").textContent = words; }

  // ---- shots ----
  const boxes = all("input[data-shot]"), dayBoxes = all("input[data-day]"), steps = all(".step");
  let missingOnly = false;
  function shown(el) { return !el.closest(".not-this"); }
  function count() {
    let got = 0, of = 0;
    for (const step of steps) {
      const mine = all("input[data-shot]", step).filter(shown);
      const done = mine.filter((b) => b.checked).length;
      const label = step.querySelector("[data-count]");
      if (label) label.textContent = done + " of " + mine.length;
      if (shown(step)) { got += done; of += mine.length; }
      step.classList.toggle("whole", done === mine.length);
      for (const b of mine) b.closest(".shot").classList.toggle("done", missingOnly && b.checked);
    }
    $("total").textContent = got + " of " + of + " made";
    $("nothing").hidden = !missingOnly || got < of;
    document.body.classList.toggle("missing-only", missingOnly);
  }
  function tick(event) {
    const id = event.target.dataset.shot || event.target.dataset.day;
    if (event.target.checked) memory.ticks[id] = 1; else delete memory.ticks[id];
    remember();
    show();
  }
  function show() {
    for (const b of boxes.concat(dayBoxes)) b.checked = Object.prototype.hasOwnProperty.call(memory.ticks, b.dataset.shot || b.dataset.day);
    count();
  }
  function list() { return boxes.filter((b) => b.checked).map((b) => b.dataset.shot + "\n").join(""); }
  function copy() {
    const text = list(), n = text ? text.split("\n").length - 1 : 0;
    $("copied").hidden = false;
    $("got").value = text;
    $("got").focus();
    $("got").select();
    let done = false;
    try { done = document.execCommand("copy"); } catch (_) { done = false; }
    const good = () => tell(n + (n === 1 ? " shot" : " shots") + " copied.");
    const bad = () => tell("Copying is not allowed here: take the text from the box.");
    if (done) good();
    else if (navigator.clipboard) navigator.clipboard.writeText(text).then(good, bad);
    else bad();
  }
  function clear() {
    if (!window.confirm("Clear all ticks of this book?")) return;
    memory.ticks = {};
    remember();
    show();
    tell("Ticks cleared.");
  }

  // ---- versions and looks ----
  function choose(version) {
    memory.version = version;
    for (const el of all("[data-for]")) {
      el.classList.toggle("not-this", version !== "" && el.dataset.for.split(" ").indexOf(version) < 0);
    }
    count();
  }
  function look(looks) {
    memory.looks = looks;
    if (looks) document.documentElement.dataset.looks = looks; else delete document.documentElement.dataset.looks;
  }

  // ---- prompter ----
  const still = window.matchMedia("(prefers-reduced-motion: reduce)");
  const pane = $("prompt-text");
  let running = false, speed = 1, size = 1, at = 0, put = 0, last = 0, awake = null, parts = [];
  function speech(line) {
    const p = document.createElement("p"), kind = line.dataset.line;
    if (kind === "direction" || kind === "sound") {
      p.className = "aside " + kind;
      p.textContent = line.textContent;
      return p;
    }
    const tag = line.querySelector(".tag");
    if (kind === "caution") p.className = "care";
    if (tag) {
      const t = document.createElement("span");
      t.className = "tag";
      t.textContent = tag.textContent;
      p.append(t);
    }
    p.append(line.querySelector(".spoken").textContent);
    return p;
  }
  function fill() {
    const lines = $("prompt-lines"), jump = $("jump");
    lines.textContent = "";
    jump.textContent = "";
    parts = [];
    for (const step of steps.filter(shown)) {
      const words = all("[data-line]", step).filter(shown);
      if (!words.length) continue;
      const part = document.createElement("section"), head = document.createElement("h2");
      head.textContent = step.querySelector("h3").textContent;
      part.append(head);
      for (const w of words) part.append(speech(w));
      lines.append(part);
      const option = document.createElement("option");
      option.value = String(parts.length);
      option.textContent = head.textContent;
      jump.append(option);
      parts.push({ el: part, seconds: Math.max(2, Number(step.dataset.spoken) || 0), id: step.dataset.step });
    }
  }
  // eye is where the line being read stands, in pixels from the pane's top.
  function eye() { return window.innerHeight / 4; }
  function top(i) { return parts[i].el.offsetTop; }
  function reading(scrolled) {
    let i = 0;
    while (i + 1 < parts.length && top(i + 1) <= scrolled + eye() + 1) i++;
    return i;
  }
  function current() { return reading(pane.scrollTop); }
  // Each step runs past the eye in the seconds it is planned to take, at one
  // pace from its head to the next step's.
  function frame(now) {
    if (!running) return;
    const passed = Math.min(0.1, Math.max(0, (now - last) / 1000));
    last = now;
    const moved = Math.abs(pane.scrollTop - put) > 2; // a hand has scrolled
    if (moved) at = pane.scrollTop;
    const i = reading(at);
    at += passed * speed * parts[i].el.offsetHeight / parts[i].seconds;
    if (!still.matches || Math.abs(at - put) > pane.clientHeight / 3) pane.scrollTop = at;
    put = pane.scrollTop;
    $("jump").value = String(i);
    const end = parts.length - 1;
    if (at + eye() > top(end) + parts[end].el.offsetHeight) { run(false); return; }
    requestAnimationFrame(frame);
  }
  function run(on) {
    running = on && parts.length > 0;
    $("run").setAttribute("aria-pressed", String(running));
    $("run").textContent = running ? "Stop" : "Start";
    $("prompter").classList.toggle("running", running);
    if (running) { at = put = pane.scrollTop; last = performance.now(); requestAnimationFrame(frame); }
    wake(running);
  }
  // wake keeps the screen on while the words run, where the browser lets us.
  function wake(on) {
    if (awake) { awake.release().catch(() => {}); awake = null; }
    if (on && navigator.wakeLock) navigator.wakeLock.request("screen").then((lock) => { if (running) awake = lock; else lock.release(); }, () => {});
  }
  function pace(by) {
    speed = Math.min(3, Math.max(0.3, Math.round((speed + by) * 10) / 10));
    $("speed").textContent = Math.round(speed * 100) + " %";
  }
  function grow(by) {
    size = Math.min(2.5, Math.max(0.5, size + by));
    pane.style.setProperty("--size", String(size));
  }
  function go(i) {
    if (!parts.length) return;
    i = Math.min(parts.length - 1, Math.max(0, i));
    pane.scrollTop = i === 0 ? 0 : top(i) - eye();
    at = put = pane.scrollTop;
    $("jump").value = String(i);
  }
  function open() {
    fill();
    const d = $("prompter");
    if (d.showModal) d.showModal(); else d.setAttribute("open", "");
    go(0);
    $("run").focus();
  }
  function shut() {
    run(false);
    const d = $("prompter");
    if (d.close) d.close(); else d.removeAttribute("open");
  }
  function press(event) {
    const inList = event.target.tagName === "SELECT", onButton = event.target.tagName === "BUTTON";
    if (event.key === " " && !(onButton && event.target.id !== "run") && !inList) { run(!running); }
    else if (event.key === "ArrowUp" && !inList) pace(0.1);
    else if (event.key === "ArrowDown" && !inList) pace(-0.1);
    else if (event.key === "ArrowRight" && !inList) go(current() + 1);
    else if (event.key === "ArrowLeft" && !inList) go(current() - 1);
    else return;
    event.preventDefault();
  }

  // ---- start ----
  recall();
  for (const b of boxes.concat(dayBoxes)) b.addEventListener("change", tick);
  for (const el of all(".controls, .dock")) el.hidden = false;
  const versions = $("version");
  if (versions) {
    versions.value = memory.version;
    if (versions.selectedIndex < 0) versions.value = "";
    choose(versions.value);
    versions.addEventListener("change", () => { choose(versions.value); remember(); });
  }
  $("looks").value = memory.looks === "light" || memory.looks === "dark" ? memory.looks : "";
  look($("looks").value);
  $("looks").addEventListener("change", () => { look($("looks").value); remember(); });
  $("copy").addEventListener("click", copy);
  $("clear").addEventListener("click", clear);
  $("goto").addEventListener("change", () => {
    const step = all(".step").find((s) => s.dataset.step === $("goto").value);
    $("goto").value = "";
    if (!step) return;
    step.scrollIntoView();
    step.querySelector("h3").focus({ preventScroll: true });
  });
  $("missing").addEventListener("click", () => {
    missingOnly = !missingOnly;
    $("missing").setAttribute("aria-pressed", String(missingOnly));
    count();
    if (missingOnly) $("steps").scrollIntoView();
  });
  $("prompt").addEventListener("click", open);
  $("run").addEventListener("click", () => run(!running));
  $("slower").addEventListener("click", () => pace(-0.1));
  $("faster").addEventListener("click", () => pace(0.1));
  $("smaller").addEventListener("click", () => grow(-0.15));
  $("larger").addEventListener("click", () => grow(0.15));
  $("mirror").addEventListener("click", () => {
    const on = pane.classList.toggle("mirrored");
    $("mirror").setAttribute("aria-pressed", String(on));
  });
  $("jump").addEventListener("change", () => go(Number($("jump").value)));
  pane.addEventListener("click", () => run(!running));
  window.addEventListener("storage", (event) => { if (event.key === key) { recall(); show(); } });
  $("shut").addEventListener("click", shut);
  $("prompter").addEventListener("keydown", press);
  $("prompter").addEventListener("close", () => run(false));
  show();
})();
