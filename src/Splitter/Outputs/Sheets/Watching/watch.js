// Watching a part being sewn. The page is whole without this: a part's place for it holds its stitches as data, and only
// this script shows a canvas and buttons there. Nothing is fetched; it works from a file: address.
(() => {
  "use strict";

  const MILLISECONDS = 1000;

  // Pixels a millimetre on the canvas, at least: a row of stitches 0.4 mm apart is told from the next.
  const SHARPNESS = 5;

  // A longer wait between two frames is a page that was in the background: the needle does not leap then.
  const LONGEST_FRAME = 200;

  // How often a needle that must not glide moves on, milliseconds (the person asked for reduced motion).
  const CALM_FRAME = 1000;

  // Thread is 0.4 mm wide: four tape steps.
  const THREAD = 4;

  const calm = matchMedia("(prefers-reduced-motion: reduce)");

  // Needle points of a part in sewing order: places in tape steps, which step each belongs to, how it is reached.
  function unpacked(data) {
    const bytes = Uint8Array.from(atob(data.moves), (c) => c.charCodeAt(0));
    const moves = new Int8Array(bytes.buffer);
    const points = [];
    let [u, v, move, step] = [0, 0, 0, 0];
    let moved = true;
    for (let run = 0; run < data.runs.length; run += 2) {
      const [kind, count] = [data.runs[run], data.runs[run + 1]];
      if (kind === 2) {
        step += count;
        moved = true;
        continue;
      }
      for (let i = 0; i < count; i++, move += 2) {
        u += moves[move];
        v += moves[move + 1];
        if (kind === 0) {
          points.push({ u, v, step, sewn: !moved });
          moved = false;
        } else moved = true;
      }
    }
    return points;
  }

  class Watch {
    constructor(place, data, words) {
      Object.assign(this, { place, data, words });
      this.points = unpacked(data);
      // Penetrations that have been made.
      this.at = this.points.length;
      this.drawn = 0;
      this.build();
      this.show(this.points.length, true);
    }

    say(key, values = {}) {
      return this.words[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);
    }

    build() {
      const make = (name, properties = {}, ...children) => {
        const made = Object.assign(document.createElement(name), properties);
        made.append(...children);
        return made;
      };
      const button = (key, action) => {
        const made = make("button", { type: "button", textContent: this.say(key) });
        made.addEventListener("click", action);
        return made;
      };
      const { halfU, halfV } = this.data;
      const scale = SHARPNESS / 10;
      this.scale = scale;
      const size = { width: 2 * halfU * scale, height: 2 * halfV * scale };
      this.thread = make("canvas", size);
      this.marks = make("canvas", size);
      const picture = make("div", { className: "watch-picture" }, this.thread, this.marks);
      picture.setAttribute("role", "img");
      picture.setAttribute("aria-label", this.say("picture", { part: this.data.part }));
      this.slider = make("input", { type: "range", min: 0, max: this.points.length, step: 1, value: this.at });
      this.slider.setAttribute("aria-label", this.say("slider", { part: this.data.part }));
      this.slider.addEventListener("input", () => {
        this.pause();
        this.show(Number(this.slider.value));
      });
      this.run = button("run", () => (this.running ? this.pause() : this.start()));
      this.speed = make("select", {}, ...this.data.speeds.map((s) =>
        make("option", { value: s, textContent: this.say("speed", { count: s }) })));
      this.speed.setAttribute("aria-label", this.say("speeds"));
      this.speed.value = this.data.speed;
      this.status = make("p", { className: "watch-status" });
      this.status.setAttribute("role", "status");
      const stops = make("div", { className: "watch-stops" });
      stops.setAttribute("aria-hidden", "true");
      for (const stop of this.stops())
        stops.append(make("i", { style: `left: ${(100 * stop) / this.points.length}%` }));
      this.place.append(
        make("h3", { textContent: this.say("title", { part: this.data.part }) }),
        picture,
        make("div", { className: "watch-track" }, this.slider, stops),
        make("div", { className: "watch-buttons" },
          button("stop-before", () => this.toStop(-1)),
          button("stitch-before", () => this.step(-1)),
          this.run,
          button("stitch-after", () => this.step(1)),
          button("stop-after", () => this.toStop(1)),
          make("label", {}, this.say("speeds") + " ", this.speed)),
        this.status);
      this.place.tabIndex = 0;
      this.place.setAttribute("role", "group");
      this.place.setAttribute("aria-label", this.say("title", { part: this.data.part }));
      this.place.addEventListener("keydown", (event) => this.key(event));
    }

    // How many penetrations have been made when the machine stops.
    stops() {
      const found = [];
      for (let i = 1; i < this.points.length; i++)
        if (this.points[i].step !== this.points[i - 1].step) found.push(i);
      return found;
    }

    key(event) {
      const keys = {
        " ": () => (this.running ? this.pause() : this.start()),
        ArrowLeft: () => this.step(event.shiftKey ? -10 : -1),
        ArrowRight: () => this.step(event.shiftKey ? 10 : 1),
        PageUp: () => this.toStop(-1),
        PageDown: () => this.toStop(1),
        Home: () => this.step(-Infinity),
        End: () => this.step(Infinity),
      };
      // A button, a list and a slider have keys of their own.
      const own = event.target === this.place || (event.target === this.slider && event.key === " ");
      if (!own || !(event.key in keys) || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      keys[event.key]();
    }

    step(by) {
      this.pause();
      this.show(this.at + by);
    }

    toStop(direction) {
      const stops = [0, ...this.stops(), this.points.length];
      const next = direction > 0 ? stops.find((s) => s > this.at) : stops.findLast((s) => s < this.at);
      this.pause();
      this.show(next ?? this.at);
    }

    start() {
      if (this.at === this.points.length) this.show(0);
      this.running = true;
      this.run.textContent = this.say("pause");
      this.last = undefined;
      requestAnimationFrame((now) => this.frame(now));
    }

    pause() {
      this.running = false;
      this.run.textContent = this.say("run");
      this.tell();
    }

    frame(now) {
      if (!this.running) return;
      this.last ??= now;
      const waited = now - this.last;
      const due = (Number(this.speed.value) * Math.min(waited, calm.matches ? CALM_FRAME : LONGEST_FRAME)) / MILLISECONDS;
      if (calm.matches ? waited >= CALM_FRAME : due >= 1) {
        this.last = now;
        const from = this.points[this.at]?.step;
        let to = Math.min(this.points.length, this.at + Math.max(1, Math.floor(due)));
        const stop = this.stops().find((s) => s > this.at && s <= to);
        to = stop ?? to;
        this.show(to, false, true);
        // The machine stops here, and so does this.
        if (stop !== undefined || to === this.points.length) return this.pause();
      }
      requestAnimationFrame((later) => this.frame(later));
    }

    // Shows so many penetrations.
    show(count, first = false, quiet = false) {
      this.at = Math.max(0, Math.min(this.points.length, count));
      this.slider.value = this.at;
      this.slider.setAttribute("aria-valuetext", this.position());
      this.draw();
      if (!quiet) this.tell(first);
    }

    position() {
      const count = (n) => String(n).replace(/\B(?=(\d{3})+$)/g, "\u00a0");
      const step = this.points[Math.max(0, this.at - 1)].step;
      return this.say("position", {
        stitch: count(this.at),
        all: count(this.points.length),
        step: step + 1,
        thread: this.data.steps[step].name,
      });
    }

    tell() {
      const step = this.points[Math.max(0, this.at - 1)].step;
      const stopped = this.stops().includes(this.at) || this.at === this.points.length;
      const text = stopped ? this.data.steps[step].stop : "";
      this.status.textContent = text ? `${this.position()} ${this.say("stopped")} ${text}` : this.position();
    }

    x(u) {
      return (u + this.data.halfU) * this.scale;
    }

    y(v) {
      return (this.data.halfV - v) * this.scale;
    }

    draw() {
      const context = this.thread.getContext("2d");
      if (this.at < this.drawn || this.drawn === 0) {
        context.fillStyle = this.data.cloth;
        context.fillRect(0, 0, this.thread.width, this.thread.height);
        this.drawn = 0;
      }
      context.lineWidth = THREAD * this.scale;
      context.lineCap = "round";
      for (; this.drawn < this.at; this.drawn++) {
        const to = this.points[this.drawn];
        const from = to.sewn ? this.points[this.drawn - 1] : to;
        context.strokeStyle = this.data.steps[to.step].color;
        context.beginPath();
        context.moveTo(this.x(from.u), this.y(from.v));
        context.lineTo(this.x(to.u), this.y(to.v));
        context.stroke();
      }
      this.mark();
    }

    // The corners and the needle, each with a rim that shows on any thread.
    mark() {
      const context = this.marks.getContext("2d");
      const stroke = (colour, width, trace) => {
        for (const [style, wide] of [["#ffffff", width + 4], [colour, width]]) {
          [context.strokeStyle, context.lineWidth] = [style, wide];
          context.beginPath();
          trace();
          context.stroke();
        }
      };
      context.clearRect(0, 0, this.marks.width, this.marks.height);
      Object.assign(context, { font: "bold 22px sans-serif", textAlign: "center", textBaseline: "middle" });
      for (const corner of this.data.corners) {
        const arms = corner.arms.map(([u, v]) => [this.x(u), this.y(v)]);
        stroke(this.data.ink, 3, () => arms.forEach(([x, y], i) => (i ? context.lineTo(x, y) : context.moveTo(x, y))));
        const [x, y] = [this.x(corner.name[0]), this.y(corner.name[1])];
        [context.strokeStyle, context.lineWidth, context.fillStyle] = ["#ffffff", 5, this.data.ink];
        context.strokeText(corner.id, x, y);
        context.fillText(corner.id, x, y);
      }
      const needle = this.points[this.at - 1];
      if (needle) stroke("#111111", 3, () => context.arc(this.x(needle.u), this.y(needle.v), 12, 0, 2 * Math.PI));
    }
  }

  const words = JSON.parse(document.getElementById("watch-words").textContent);
  for (const place of document.querySelectorAll(".watch")) {
    const data = JSON.parse(place.querySelector("script").textContent);
    place.hidden = false;
    // A canvas is made when the person comes near to it: thirty parts at once are many pixels.
    new IntersectionObserver((seen, observer) => {
      if (!seen.some((s) => s.isIntersecting)) return;
      observer.disconnect();
      new Watch(place, data, words);
    }, { rootMargin: "600px" }).observe(place);
  }
})();
