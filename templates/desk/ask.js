// Questions to the desk on this machine. An answer that is a fault is thrown: {message, hint, line, column}.

const token = document.querySelector("meta[name=promptprep-token]").content;

export async function ask(question, values = {}) {
  let answer;
  try {
    answer = await fetch(`/ask/${question}`, {
      method: "POST",
      headers: { "content-type": "application/json", "x-promptprep-token": token },
      body: JSON.stringify(values),
    });
  } catch {
    throw { message: "The desk does not answer.", hint: "Start it again with promptprep desk; your text is still here." };
  }
  const said = await answer.json().catch(() => ({ error: { message: "The desk stumbled.", hint: "Look where it was started." } }));
  if (said.error) throw said.error;
  return said;
}
