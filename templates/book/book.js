"use strict";
(function () {
  const $ = (id) => document.getElementById(id);
  const all = (q, from) => Array.from((from || document).querySelectorAll(q));
  const key = "shoot-book:" + document.body.dataset.title;

  // ---- what is remembered ----
  let keeps = true;
  let memory = { ticks: {}, version: "", looks: "" };
  function recall() {
    try {
      localStorage.setItem(key + ":try", "1");
      localStorage.removeItem(key + ":try");
      const found = JSON.parse(localStorage.getItem(key) || "{}");
      if (found && typeof found === "object") {
        if (found.ticks && typeof found.ticks === "object") memory.ticks = found.ticks;
        memory.version = String(found.version || "");
        memory.looks = String(found.looks || "");
      }
    } catch (_) { keeps = false; }
    $("memory").hidden = keeps;
  }
  function remember() {
    if (!keeps) return;
    try { localStorage.setItem(key, JSON.stringify(memory)); } catch (_) { keeps = false; $("memory").hidden = false; }
  }
  function tell(words) { $("status").textContent = words; }

  // ---- shots ----
  const boxes = all("input[data-shot]");
  let missingOnly = false;
  function shown(el) { return !el.closest(".not-this"); }
  function count() {
    let got = 0, of = 0;
    for (const step of all(".step")) {
      const mine = all("input[data-shot]", step).filter(shown);
      const done = mine.filter((b) => b.checked).length;
      const label = step.querySelector("[data-count]");
      if (label) label.textContent = done + " of " + mine.length;
      if (shown(step)) { got += done; of += mine.length; }
      for (const b of all("input[data-shot]", step)) b.closest(".shot").classList.toggle("done", missingOnly && b.checked);
    }
    $("total").textContent = got + " of " + of + " shots";
  }
  function tick(event) {
    const b = event.target;
    if (b.checked) memory.ticks[b.dataset.shot] = 1; else delete memory.ticks[b.dataset.shot];
    remember();
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
    for (const b of boxes) b.checked = false;
    memory.ticks = {};
    remember();
    count();
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
  let running = false, speed = 1, size = 1, at = 0, last = 0, held = 0, parts = [];
  function fill() {
    const lines = $("prompt-lines"), jump = $("jump");
    lines.textContent = "";
    jump.textContent = "";
    parts = [];
    for (const step of all(".step").filter(shown)) {
      const words = all("[data-line]", step).filter(shown);
      if (!words.length) continue;
      const part = document.createElement("section"), head = document.createElement("h2");
      head.textContent = step.querySelector("h3").textContent;
      part.append(head);
      for (const w of words) {
        const p = document.createElement("p");
        p.className = w.dataset.line;
        p.textContent = (w.querySelector(".spoken") || w).textContent;
        part.append(p);
      }
      lines.append(part);
      const option = document.createElement("option");
      option.value = String(parts.length);
      option.textContent = head.textContent;
      jump.append(option);
      parts.push({ el: part, seconds: Math.max(2, Number(step.dataset.spoken) || 0), id: step.dataset.step });
    }
  }
  function current() {
    const eye = pane.scrollTop + pane.clientHeight / 3;
    let i = 0;
    while (i + 1 < parts.length && parts[i + 1].el.offsetTop - pane.offsetTop <= eye) i++;
    return i;
  }
  function frame(now) {
    if (!running) return;
    const passed = Math.min(0.1, (now - last) / 1000);
    last = now;
    const part = parts[current()];
    if (part) at += passed * speed * part.el.offsetHeight / part.seconds;
    if (still.matches) {
      if (at - held > pane.clientHeight / 3) { held = at; pane.scrollTop = at; }
    } else pane.scrollTop = at;
    if (pane.scrollTop + pane.clientHeight >= pane.scrollHeight - 1) { run(false); return; }
    requestAnimationFrame(frame);
  }
  function run(on) {
    running = on && parts.length > 0;
    $("run").setAttribute("aria-pressed", String(running));
    $("run").textContent = running ? "Stop" : "Start";
    if (running) { at = held = pane.scrollTop; last = performance.now(); requestAnimationFrame(frame); }
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
    pane.scrollTop = parts[i].el.offsetTop - pane.offsetTop - pane.clientHeight / 4;
    at = held = pane.scrollTop;
    $("jump").value = String(i);
  }
  function open() {
    fill();
    const d = $("prompter");
    if (d.showModal) d.showModal(); else d.setAttribute("open", "");
    go(0);
    pane.scrollTop = 0;
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
  for (const b of boxes) { b.checked = Object.prototype.hasOwnProperty.call(memory.ticks, b.dataset.shot); b.addEventListener("change", tick); }
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
    if (step) step.scrollIntoView();
  });
  $("missing").addEventListener("click", () => {
    missingOnly = !missingOnly;
    $("missing").setAttribute("aria-pressed", String(missingOnly));
    count();
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
  $("shut").addEventListener("click", shut);
  $("prompter").addEventListener("keydown", press);
  $("prompter").addEventListener("close", () => run(false));
  count();
})();
