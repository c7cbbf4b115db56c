"""A page with the shelf's modules at hand, for tests of what they store and read."""

MODULES = """
    const root = new URL(document.body.dataset.root, location);
    const at = (name) => new URL(`assets/shelf/${name}.js`, root).href;
    const { openShelf, ShelfError } = await import(at("store"));
"""
OPENED = f"{MODULES} const shelf = await openShelf();"
# What a call came to: its value, or the reason and words of a ShelfError. Any other error fails the test.
ATTEMPT = """
    const attempt = async (call) => {
      try {
        return { value: (await call()) ?? null };
      } catch (error) {
        if (!(error instanceof ShelfError)) throw error;
        return { reason: error.reason, message: error.message, unsaved: error.unsaved };
      }
    };
"""
# The database itself, as nothing of ours would touch it.
RAW = """
    const raw = (mode, work) => new Promise((resolve, reject) => {
      const request = indexedDB.open("mulmbook-shelf");
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        const database = request.result;
        const transaction = database.transaction(["operations", "local", "aside"], mode);
        const result = work(transaction.objectStore("operations"), transaction);
        transaction.oncomplete = () => { database.close(); resolve(result?.result); };
        transaction.onabort = () => { database.close(); reject(transaction.error); };
      };
    });
"""
# Until something holds, looked at again after each change of the shelf.
UNTIL = """
    const until = async (holds) => (await holds()) || new Promise((resolve) => {
      shelf.onChange(async () => (await holds()) && resolve(true));
    });
"""


def in_page(page, body, given=None):
    """Run JavaScript with ``at``, ``openShelf``, ``attempt`` and ``raw``; ``given`` is its input."""
    return page.evaluate(f"async (given) => {{ {MODULES} {ATTEMPT} {RAW} {body} }}", given)


def with_shelf(page, body, given=None):
    """The same with the page's open ``shelf``, and ``until``."""
    helpers = f"{OPENED} {ATTEMPT} {RAW} {UNTIL}"
    return page.evaluate(f"async (given) => {{ {helpers} {body} }}", given)


def open_page(context):
    """A small page of the book."""
    page = context.new_page()
    page.goto("about/")
    return page
