"""One Python for all pages of a worker: a page that would start its own speaks to the one that runs.

A start takes seconds, and is the same in each page. So it is tried in the tests marked ``starts_python``
and ``offline_copy`` alone; in all others a page's worker is one that hands each question on to the
lender, a page that does nothing else, and the answers back. Page and Python are the book's own.
"""

LENDING = "python-lent-to-tests"
OWN_PYTHON = "window.startsItsOwnPython = true;"

# What a page has in place of its worker. Only the worker that runs Python is replaced.
BORROW = f"""
{{
  const OwnWorker = window.Worker;
  class LentWorker {{
    constructor() {{
      this.id = `${{Math.random()}} ${{performance.timeOrigin}}`;
      this.channel = new BroadcastChannel("{LENDING}");
      this.channel.onmessage = ({{ data }}) => {{
        if (data.to === this.id) this.onmessage?.({{ data: data.message }});
      }};
      this.channel.postMessage({{ from: this.id }});
    }}
    postMessage(message) {{ this.channel.postMessage({{ from: this.id, message }}); }}
    terminate() {{ this.channel.close(); }}
  }}
  window.Worker = function (url, options) {{
    const isOwn = window.startsItsOwnPython || !String(url).endsWith("/calculator-worker.js");
    return isOwn ? new OwnWorker(url, options) : new LentWorker();
  }};
}}
"""

# The lender: its worker starts when the first page asks for it.
LEND = f"""(root) => {{
  const channel = new BroadcastChannel("{LENDING}");
  const asked = new Map(); // of each question that waits: who asked, and its number there
  const early = new Set(); // who waits for Python's start
  let worker, isReady, count = 0;
  const tellReady = (to) => channel.postMessage({{ to, message: {{ ready: true }} }});
  const begin = () => {{
    worker = new Worker(new URL("assets/calculator-worker.js", root), {{ type: "module" }});
    worker.onmessage = ({{ data }}) => {{
      if (data.ready) {{ isReady = true; early.forEach(tellReady); }}
      else if (data.failed) early.forEach((to) => channel.postMessage({{ to, message: data }}));
      else if (asked.has(data.id)) {{
        const {{ from, id }} = asked.get(data.id);
        asked.delete(data.id);
        channel.postMessage({{ to: from, message: {{ ...data, id }} }});
      }}
    }};
  }};
  channel.onmessage = ({{ data: {{ from, message }} }}) => {{
    if (!worker) begin();
    if (message) {{
      asked.set(++count, {{ from, id: message.id }});
      worker.postMessage({{ ...message, id: count }});
    }} else if (isReady) tellReady(from);
    else early.add(from);
  }};
}}"""


def open_lender(context, address):
    """The page that lends its Python to the other pages of the context."""
    lender = context.new_page()
    lender.add_init_script(OWN_PYTHON)
    lender.goto("runtime/parts.json")  # of this site, and without a script
    lender.evaluate(LEND, address)
    return lender
