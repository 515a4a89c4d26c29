// The copy: a plain text field over a layer of the same text that carries the marks of the findings.

export function editor(field, under, changed) {
  let marks = [];
  let now = -1;

  field.addEventListener("input", () => {
    marks = [];
    now = -1;
    draw();
    changed();
  });
  field.addEventListener("scroll", follow);
  new ResizeObserver(follow).observe(field);

  function follow() {
    under.scrollTop = field.scrollTop;
  }

  // Findings may overlap: the text is cut at every edge, and a piece wears the gravest mark over it.
  function draw() {
    const text = field.value;
    const edges = new Set([0, text.length]);
    for (const mark of marks) edges.add(mark.start).add(mark.end);
    const cuts = [...edges].filter((at) => at >= 0 && at <= text.length).sort((a, b) => a - b);
    const pieces = [];
    let open = [];
    const starts = [...marks].sort((a, b) => a.start - b.start);
    let next = 0;
    for (let i = 0; i + 1 < cuts.length; i++) {
      while (next < starts.length && starts[next].start <= cuts[i]) open.push(starts[next++]);
      open = open.filter((mark) => mark.end > cuts[i]);
      pieces.push(piece(text.slice(cuts[i], cuts[i + 1]), open));
    }
    under.replaceChildren(...pieces, "\n");
    follow();
  }

  function piece(text, over) {
    if (!over.length) return text;
    const mark = document.createElement("mark");
    mark.className = ["fix", "look", "note"].find((level) => over.some((one) => one.level === level));
    mark.classList.toggle("now", over.some((one) => one.number === now));
    mark.textContent = text;
    return mark;
  }

  function top(at) {
    const range = document.createRange();
    let left = at;
    const walk = document.createTreeWalker(under, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      if (left <= node.length) {
        range.setStart(node, left);
        range.setEnd(node, left);
        const box = range.getBoundingClientRect();
        return box.top - under.getBoundingClientRect().top + under.scrollTop;
      }
      left -= node.length;
    }
    return 0;
  }

  return {
    get text() {
      return field.value;
    },
    get caret() {
      return field.selectionStart;
    },
    put(text, direction = "auto") {
      field.value = text;
      field.dir = under.dir = direction;
      marks = [];
      draw();
      field.setSelectionRange(0, 0);
      field.scrollTop = 0;
    },
    turn(direction) {
      field.dir = under.dir = direction;
    },
    mark(findings) {
      marks = findings.map((one, number) => ({ ...one, number, end: Math.max(one.end, one.start + 1) }));
      draw();
    },
    show(start, end, number = -1) {
      now = number;
      draw();
      field.focus({ preventScroll: true });
      field.setSelectionRange(start, end);
      field.scrollTop = Math.max(0, top(start) - field.clientHeight / 3);
    },
    showLine(line, column) {
      const lines = field.value.split("\n");
      const start = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0) + Math.max(0, (column ?? 1) - 1);
      this.show(start, Math.min(field.value.length, start + 1));
    },
  };
}
