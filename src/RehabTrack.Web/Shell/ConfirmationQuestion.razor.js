// A dialog stands before the page only when a script opens it: what is behind takes neither keys nor pointer until it is answered.

export function ask(dialog, field) {
  if (!dialog?.isConnected) {
    return;
  }

  if (!dialog.open) {
    dialog.showModal();
  }

  field.focus();
}
