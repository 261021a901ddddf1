import time
def test_a(federation): print(federation.url("kite_member"))
