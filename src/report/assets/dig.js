// The dig page: one cell at a time, staff entry, marks of done cells.
{
  const data = JSON.parse(byId("data").textContent);
  const NAME = 0, COLUMN = 1, ROW = 2, ALONG = 3, ACROSS = 4, GROUND = 5, DIG = 6, CUT = 7, MEAN = 8, STAFF = 9;
  const cells = data.cells;
  const view = byId("view"), svg = view.querySelector("svg"), size = svg.viewBox.baseVal;
  const svgElement = (name, attributes) => {
    const element = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const key in attributes) element.setAttribute(key, attributes[key]);
    return element;
  };
  // where a cell stands on the drawing
  const plan = data.plan;
  const square = (i) => ({ x: plan.x + (cells[i][COLUMN] - plan.column) * plan.cell,
    y: plan.y + (cells[i][ROW] - plan.row) * plan.cell });
  const ground = view.querySelector(".ground"), cursor = byId("cursor");
  const places = new Map(cells.map((c, i) => [c[COLUMN] + "," + c[ROW], i]));
  const columns = cells.map((c) => c[COLUMN]), rows = cells.map((c) => c[ROW]);
  const least = (list) => list.reduce((a, b) => Math.min(a, b));
  const most = (list) => list.reduce((a, b) => Math.max(a, b));
  const edge = { left: least(columns), right: most(columns), top: least(rows), bottom: most(rows) };

  const figure = (value, decimals) => value === null ? "–" : value.toFixed(decimals);
  let now = -1;

  // what a staff must read on the dig level: of the job's laser, or of a height typed in
  const wanted = (cell) => {
    const typed = number(byId("instrument").value);
    if (typed === undefined) return undefined;
    return typed === null ? cell[STAFF] : cell[DIG] === null ? null : typed - cell[DIG];
  };
  // null: nothing typed; undefined: not a number
  const number = (text) => {
    const plain = text.trim().replace(",", ".");
    if (plain === "") return null;
    return /^-?\d+(\.\d*)?$|^-?\.\d+$/.test(plain) ? Number(plain) : undefined;
  };

  const answer = () => {
    const out = byId("answer"), reads = number(byId("read").value);
    const cell = cells[now];
    const staff = cell ? wanted(cell) : null;
    byId("o-staff").textContent = figure(staff === undefined ? null : staff, 3);
    if (reads === undefined || staff === undefined) out.textContent = "That is not a number in metres.";
    else if (!cell) out.textContent = reads === null ? "Bigger reading = deeper." : "Choose a cell first.";
    else if (staff === null) out.textContent = cell[DIG] === null ? "Not dug at the middle of this cell."
      : "Type the height of instrument: the job names no laser.";
    else if (reads === null) out.textContent = "Bigger reading = deeper.";
    else {
      const more = staff - reads, by = Math.abs(more);
      out.textContent = by < 0.0005 ? "at dig level" :
        (more > 0 ? "dig " + by.toFixed(2) + " more" : by.toFixed(2) + " below dig level: stop") +
        " (" + by.toFixed(3) + ")";
    }
  };

  // the frame round the chosen cell
  const place = () => {
    cursor.hidden = now < 0;
    if (now < 0) return;
    const at = square(now), scale = ground.clientWidth / size.width;
    cursor.style.transform = `translate(${at.x * scale}px, ${at.y * scale}px)`;
    cursor.style.width = cursor.style.height = plan.cell * scale + "px";
  };

  const choose = (i) => {
    now = i;
    const cell = cells[i];
    place();
    byId("o-cell").textContent = cell[NAME];
    byId("o-kind").textContent = cell[CUT] === null ? "mean cut" : "cut";
    byId("o-cut").textContent = figure(cell[CUT] === null ? cell[MEAN] : cell[CUT], 2);
    byId("o-dig").textContent = figure(cell[DIG], 3);
    byId("o-ground").textContent = figure(cell[GROUND], 3);
    byId("o-across").textContent = figure(cell[ACROSS], 2);
    byId("o-along").textContent = figure(cell[ALONG], 2);
    byId("read").value = "";
    answer();
    showDone();
    byId("said").textContent = "cell " + cell[NAME] + ", " + byId("o-kind").textContent + " " + byId("o-cut").textContent + ", dig level " +
      byId("o-dig").textContent + ", ground " + byId("o-ground").textContent + ", staff reading " +
      byId("o-staff").textContent + ", " + figure(cell[ALONG], 2) + " along A-B, " + figure(cell[ACROSS], 2) +
      " from it" + (marks.has(cell[NAME]) ? ", done" : "");
  };

  // the view follows the chosen cell
  const follow = () => {
    const at = square(now), scale = ground.clientWidth / size.width, margin = 12;
    const x = at.x * scale, y = at.y * scale, side = plan.cell * scale;
    if (x < view.scrollLeft + margin) view.scrollLeft = x - margin;
    if (y < view.scrollTop + margin) view.scrollTop = y - margin;
    if (x + side > view.scrollLeft + view.clientWidth - margin)
      view.scrollLeft = x + side - view.clientWidth + margin;
    if (y + side > view.scrollTop + view.clientHeight - margin)
      view.scrollTop = y + side - view.clientHeight + margin;
  };

  // the next cell that way; cells without cut are stepped over
  const step = (columnStep, rowStep) => {
    if (now < 0) return choose(0);
    let column = cells[now][COLUMN], row = cells[now][ROW];
    for (;;) {
      column += columnStep;
      row += rowStep;
      if (column < edge.left || column > edge.right || row < edge.top || row > edge.bottom) return;
      const i = places.get(column + "," + row);
      if (i !== undefined) return choose(i);
    }
  };

  // marks: the names of done cells with the time of the mark
  const marks = new Map(JSON.parse(store.get(data.key) || "[]"));
  const names = new Map(cells.map((c, i) => [c[NAME], i]));
  const ticks = new Map(), layer = svgElement("g", { class: "ticks" });
  svg.append(layer);
  const tick = (i, on) => {
    if (!on) { ticks.get(i)?.remove(); ticks.delete(i); return; }
    if (ticks.has(i)) return;
    const { x, y } = square(i), s = plan.cell;
    const mark = svgElement("path", { class: "tick", d: `M${x} ${y + s}L${x + s} ${y}M${x + s * 0.08} ${y + s * 0.78}` +
      `L${x + s * 0.2} ${y + s * 0.92}L${x + s * 0.42} ${y + s * 0.68}` });
    layer.append(mark);
    ticks.set(i, mark);
  };
  const showDone = () => {
    const on = now >= 0 && marks.has(cells[now][NAME]);
    byId("done").disabled = now < 0;
    byId("done").setAttribute("aria-pressed", String(on));
    byId("count").textContent = marks.size + " of " + cells.length + " done";
  };
  const toggle = () => {
    if (now < 0) return;
    const name = cells[now][NAME];
    if (!marks.delete(name)) marks.set(name, new Date().toISOString());
    tick(now, marks.has(name));
    store.set(data.key, JSON.stringify([...marks]));
    showDone();
    byId("said").textContent = "cell " + name + (marks.has(name) ? " done" : " not done") + ", " + marks.size +
      " of " + cells.length + " done";
  };
  for (const name of marks.keys()) if (names.has(name)) tick(names.get(name), true); else marks.delete(name);
  showDone();

  const download = (text, name) => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
    link.download = name;
    link.click();
    URL.revokeObjectURL(link.href);
  };
  byId("export").addEventListener("click", () =>
    download("cell,done\r\n" + [...marks].map((m) => m.join(",") + "\r\n").join(""), "dig-done.csv"));
  byId("clear").addEventListener("click", () => {
    if (marks.size === 0 || !window.confirm("Clear the marks of " + marks.size + " cells?")) return;
    for (const i of [...ticks.keys()]) tick(i, false);
    marks.clear();
    store.set(data.key, "[]");
    showDone();
  });
  byId("done").addEventListener("click", toggle);
  byId("read").addEventListener("input", answer);
  byId("instrument").addEventListener("input", answer);
  // the cell under a finger, by its place alone: no cell need be a thing of its own
  ground.addEventListener("click", (event) => {
    const box = ground.getBoundingClientRect(), scale = box.width / size.width;
    const step = (from, edge, first) => first + Math.floor(((from / scale) - edge) / plan.cell);
    const i = places.get(step(event.clientX - box.left, plan.x, plan.column) + "," +
      step(event.clientY - box.top, plan.y, plan.row));
    if (i !== undefined) choose(i);
  });
  const keys = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  view.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    if (keys[event.key]) step(...keys[event.key]);
    else if (event.key === " " || event.key === "Enter") toggle();
    else if (event.key === "+") zoom(1.4);
    else if (event.key === "-") zoom(1 / 1.4);
    else return;
    event.preventDefault();
    if (now >= 0) follow();
  });

  // Figures are shown where they are in view and large enough to be read, and the drawing keeps its size
  // and is scaled as one picture: a pit of ten thousand cells stays quick.
  ground.style.aspectRatio = size.width + " / " + size.height;
  ground.classList.add("scaled");
  const blocks = [...svg.querySelectorAll(".block")].map((block) => {
    const texts = [...block.children], at = (text, name) => Number(text.getAttribute(name));
    const along = texts.map((text) => at(text, "x")), down = texts.map((text) => at(text, "y"));
    return { block, height: at(texts[0], "font-size"), left: least(along) - plan.cell, right: most(along) + plan.cell,
      top: least(down) - plan.cell, foot: most(down) + plan.cell, shown: true };
  });
  const showFigures = (seen) => {
    for (const part of blocks) {
      const shown = seen(part);
      if (shown === part.shown) continue;
      part.shown = shown;
      part.block.style.display = shown ? "" : "none";
    }
  };
  const show = () => {
    const scale = ground.clientWidth / size.width;
    const left = view.scrollLeft / scale, right = left + view.clientWidth / scale;
    const top = view.scrollTop / scale, foot = top + view.clientHeight / scale;
    showFigures((part) => part.height * scale >= 7 && part.right > left && part.left < right &&
      part.foot > top && part.top < foot);
    svg.style.transform = `scale(${ground.clientWidth / 1000})`;
    place();
  };
  let waiting = false;
  view.addEventListener("scroll", () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => { waiting = false; show(); });
  });
  window.addEventListener("resize", show);

  // zoom 1 shows the whole pit; at first a cell is as large as a fingertip
  let scale = 1;
  const mostZoom = 60;
  const zoom = (by) => {
    const width = ground.clientWidth, height = ground.clientHeight;
    const middle = (view.scrollLeft + view.clientWidth / 2) / width;
    const level = (view.scrollTop + view.clientHeight / 2) / height;
    const before = scale;
    scale = Math.min(mostZoom, Math.max(1, scale * by));
    ground.style.width = 100 * scale + "%";
    view.scrollLeft = middle * width * scale / before - view.clientWidth / 2;
    view.scrollTop = level * height * scale / before - view.clientHeight / 2;
    show();
  };
  byId("nearer").addEventListener("click", () => zoom(1.4));
  byId("farther").addEventListener("click", () => zoom(1 / 1.4));
  byId("whole").addEventListener("click", () => zoom(1 / scale));
  if (cells.length) zoom(Math.max(1, 34 * size.width / (plan.cell * view.clientWidth)));
  view.scrollLeft = view.scrollTop = 0;
  show();
}
