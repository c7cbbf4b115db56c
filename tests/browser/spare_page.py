"""A page that one test after another uses, each from an empty start: a new one costs half a second."""

LASTING = ("add_init_script", "expose_binding", "expose_function", "on", "once", "route")

# What a tab keeps outlasts what its context stores; a page that is none of the book's has nothing.
FORGET = "() => location.protocol.startsWith('http') && sessionStorage.clear()"


class SparePage:
    """Hands out one page of a context; a page on which something was set that lasts is not used again."""

    def __init__(self, context, size):
        self.context, self.size = context, size
        self.page, self.spoilt = None, False

    def prepare(self):
        """Have a page ready; before anybody listens to the context, so that it is not heard twice."""
        if self.page is None or self.page.is_closed():
            self.page = self.context.new_page()
            for name in LASTING:
                setattr(self.page, name, self.spoiling(getattr(self.page, name)))

    def take(self, watch):
        """The page, empty, with its complaints going to ``watch``."""
        watch.page(self.page)
        self.spoilt = False
        self.page.bring_to_front()  # behind another page nothing is drawn, and nothing comes to rest
        return self.page

    def spoiling(self, method):
        """The method, after whose call the page is not used again."""

        def call(*given, **named):
            self.spoilt = True
            return method(*given, **named)

        return call

    def give_back(self):
        """Empty the page, or close it."""
        if self.page.is_closed():
            return
        if self.spoilt:
            self.page.close()
            return
        self.page.evaluate(FORGET)
        self.page.goto("about:blank")
        self.page.set_viewport_size(self.size)
        self.page.emulate_media(color_scheme="null")
