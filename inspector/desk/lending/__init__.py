"""The place of lending: who has what, handing out, taking back, the trip told afterwards."""
