// The photo on the page: what Python counted drawn over it, corners to drag, and a magnifier beside the finger.

const WIDEST = 900; // pixels of the picture shown
const ZOOM = 3;
const STEP = 0.5; // percent of the picture for an arrow key
const COUNTED = [255, 0, 200, 130]; // red, green, blue, alpha: a colour that no plant has
const LINES = { edge: "#ffe14d", ring: "#7fe3ff", "left-out": "#ff9d8f" };

/** `moved(corners)` hears of dragged corners, `tapped({x_percent, y_percent})` of a tap on the picture. */
export function openStage(element, { moved, tapped }) {
  const shown = element.querySelector(".shown");
  const loupe = element.querySelector(".loupe");
  const pen = shown.getContext("2d");
  const stage = { element, fine: null, seen: { corners: [], taps: [], shapes: [] }, noMask: false };

  stage.open = (fine) => {
    stage.fine = fine;
    const scale = Math.min(1, WIDEST / Math.max(fine.width, fine.height));
    shown.width = fine.width * scale;
    shown.height = fine.height * scale;
    element.hidden = false;
    draw();
  };
  stage.show = (seen) => {
    stage.seen = seen;
    placeHandles();
    draw();
  };
  stage.hideMask = (hidden) => {
    stage.noMask = hidden;
    draw();
  };
  stage.forTaps = (taps) => element.classList.toggle("tapping", taps);

  shown.addEventListener("click", (event) => {
    const box = shown.getBoundingClientRect();
    tapped({ x_percent: percent(event.clientX - box.left, box.width), y_percent: percent(event.clientY - box.top, box.height) });
  });

  function draw() {
    if (!stage.fine) return;
    pen.drawImage(stage.fine, 0, 0, shown.width, shown.height);
    const { mask, shapes, taps } = stage.seen;
    if (mask && !stage.noMask) pen.drawImage(overlay(mask), 0, 0, shown.width, shown.height);
    for (const { what, points } of shapes) outline(points, LINES[what]);
    for (const tap of taps) dot(tap);
  }

  function outline(points, colour) {
    pen.beginPath();
    for (const [x, y] of points) pen.lineTo((x / 100) * shown.width, (y / 100) * shown.height);
    pen.closePath();
    for (const [width, style] of [[5, "#000a"], [2.5, colour]]) Object.assign(pen, { lineWidth: width, strokeStyle: style }).stroke();
  }

  function dot({ what, x_percent: x, y_percent: y }) {
    pen.beginPath();
    pen.arc((x / 100) * shown.width, (y / 100) * shown.height, 7, 0, 7);
    Object.assign(pen, { lineWidth: 3, strokeStyle: "#fff", fillStyle: what === "plant" ? "#0a7d2c" : "#12324a" });
    pen.fill();
    pen.stroke();
  }

  /** One button a corner, kept while it is dragged. */
  function placeHandles() {
    const { corners } = stage.seen;
    const handles = [...element.querySelectorAll(".corner")];
    for (const handle of handles.slice(corners.length)) handle.remove();
    corners.forEach((corner, number) => {
      const handle = handles[number] ?? newHandle(number);
      put(handle, Number(corner.x_percent), Number(corner.y_percent));
    });
  }

  function put(handle, x, y) {
    handle.place = [within(x), within(y)];
    handle.style.left = `${handle.place[0]}%`;
    handle.style.top = `${handle.place[1]}%`;
  }

  function newHandle(number) {
    const handle = Object.assign(document.createElement("button"), { className: "corner", place: [0, 0] });
    handle.type = "button";
    handle.setAttribute("aria-label", `Corner ${number + 1} of the water; arrow keys move it`);
    element.append(handle);
    handle.addEventListener("pointerdown", (event) => drag(handle, event));
    handle.addEventListener("keydown", (event) => {
      const [x, y] = { ArrowLeft: [-STEP, 0], ArrowRight: [STEP, 0], ArrowUp: [0, -STEP], ArrowDown: [0, STEP] }[event.key] ?? [];
      if (x === undefined) return;
      event.preventDefault();
      put(handle, handle.place[0] + x, handle.place[1] + y);
      tellCorners();
    });
    return handle;
  }

  function drag(handle, { pointerId, clientX, clientY }) {
    const [startX, startY] = handle.place;
    const box = shown.getBoundingClientRect();
    handle.setPointerCapture(pointerId);
    magnify(handle);
    handle.onpointermove = (event) => {
      put(handle, startX + (100 * (event.clientX - clientX)) / box.width, startY + (100 * (event.clientY - clientY)) / box.height);
      magnify(handle);
    };
    handle.onpointerup = handle.onpointercancel = () => {
      handle.onpointermove = handle.onpointerup = handle.onpointercancel = null;
      loupe.hidden = true;
      if (String([startX, startY]) !== String(handle.place)) tellCorners();
    };
  }

  /** The place under the finger, three times as large, in the corner of the picture away from it. */
  function magnify({ place: [x, y] }) {
    loupe.hidden = false;
    loupe.classList.toggle("right", x < 50);
    const glass = loupe.getContext("2d");
    const { width, height } = stage.fine;
    const reach = ((loupe.width / ZOOM) * width) / shown.clientWidth;
    glass.fillRect(0, 0, loupe.width, loupe.height);
    glass.drawImage(stage.fine, (x / 100) * width - reach / 2, (y / 100) * height - reach / 2, reach, reach, 0, 0, loupe.width, loupe.height);
    const middle = loupe.width / 2;
    for (const [line, colour] of [[4, "#000"], [1.5, "#ffe14d"]]) {
      Object.assign(glass, { lineWidth: line, strokeStyle: colour });
      glass.strokeRect(middle - 9, middle - 9, 18, 18);
    }
  }

  function tellCorners() {
    moved([...element.querySelectorAll(".corner")].map(({ place: [x, y] }) => ({ x_percent: x.toFixed(2), y_percent: y.toFixed(2) })));
  }

  return stage;
}

function within(value) {
  return Math.min(100, Math.max(0, value));
}

function percent(part, whole) {
  return within((100 * part) / whole).toFixed(2);
}

/** The mask, eight points an octet, as a picture to lay over the photo. */
function overlay({ width, height, bits }) {
  const made = document.createElement("canvas");
  Object.assign(made, { width, height });
  const pen = made.getContext("2d");
  const image = pen.createImageData(width, height);
  const octets = atob(bits);
  for (let point = 0; point < width * height; point++) {
    if (octets.charCodeAt(point >> 3) & (128 >> (point & 7))) image.data.set(COUNTED, 4 * point);
  }
  pen.putImageData(image, 0, 0);
  return made;
}
